package county.bigtree.registry.pages;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/**
 * Messages of which there are as many as there is to say: {@code key.1}, {@code key.2}
 * and so on, up to the first that is not there.
 */
@Component
public class Phrases {

	private final MessageSource messages;

	Phrases(MessageSource messages) {
		this.messages = messages;
	}

	public List<String> list(String key) {
		return IntStream.iterate(1, (number) -> number + 1)
			.mapToObj(
					(number) -> this.messages.getMessage(key + "." + number, null, "", LocaleContextHolder.getLocale()))
			.map(Objects::requireNonNull)
			.takeWhile((message) -> !message.isEmpty())
			.toList();
	}

}
