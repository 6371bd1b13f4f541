package county.bigtree.registry.handover;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

import county.bigtree.registry.naming.Names;
import county.bigtree.registry.naming.Naming;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * Puts open work into the words of the pages.
 */
@Component
class Prose {

	private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.US);

	private final MessageSource messages;

	private final Naming naming;

	Prose(MessageSource messages, Naming naming) {
		this.messages = messages;
		this.naming = naming;
	}

	/** The names of species of a list, and of counties. */
	Names names(List<String> species) {
		return this.naming.begin().of(species);
	}

	String day(LocalDate day) {
		return DAY.format(day);
	}

	/** A message, with whatever it is about. */
	String say(String key, Object... about) {
		return this.messages.getMessage(key, about, Locale.US);
	}

	/** A message within a sentence, of which the first letter is small. */
	String within(String key) {
		String said = say(key);
		return said.substring(0, 1).toLowerCase(Locale.US) + said.substring(1);
	}

	/** What was typed, where anything was. */
	static String more(String between, @org.jspecify.annotations.Nullable String typed) {
		return (typed == null || typed.isEmpty()) ? "" : between + typed;
	}

}
