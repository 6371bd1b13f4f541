package county.bigtree.registry.pages.filing;

import java.util.Locale;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * What the forms themselves have to say about what was typed.
 */
@Component
class FilingWords {

	private final MessageSource messages;

	FilingWords(MessageSource messages) {
		this.messages = messages;
	}

	String get(String key, Object... values) {
		return this.messages.getMessage(key, values, Locale.US);
	}

}
