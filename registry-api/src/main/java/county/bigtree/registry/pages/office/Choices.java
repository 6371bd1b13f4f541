package county.bigtree.registry.pages.office;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * What a field lets choose from: values with their words, in order.
 */
@Component
class Choices {

	private final MessageSource messages;

	Choices(MessageSource messages) {
		this.messages = messages;
	}

	/** Values of which each has a message beneath the prefix. */
	public Map<String, String> of(String prefix, List<String> values) {
		Map<String, String> choices = new LinkedHashMap<>();
		values.forEach((value) -> choices.put(value, words(prefix + value)));
		return choices;
	}

	/** The same, with nothing chosen before them. */
	Map<String, String> orNone(String none, String prefix, List<String> values) {
		Map<String, String> choices = new LinkedHashMap<>();
		choices.put("", words(none));
		choices.putAll(of(prefix, values));
		return choices;
	}

	String words(String message) {
		return this.messages.getMessage(message, null, Locale.US);
	}

}
