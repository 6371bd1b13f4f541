package county.bigtree.registry.photo;

import java.time.LocalDate;

import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

/**
 * What is told of a photo by who sends it.
 *
 * @param takenOn the day on which it was taken, or null
 * @param text what there is to see, in words for those who can't see it; at most
 * {@value #LONGEST_TEXT} characters, or null
 * @param credit the name under which it is shown, at most {@value #LONGEST_CREDIT}
 * characters, or null for none
 */
public record PhotoBody(Shows shows, @Nullable LocalDate takenOn, @Nullable String text, @Nullable String credit) {

	/** Longer ones are cut by those who read pages aloud. */
	static final int LONGEST_TEXT = 500;

	static final int LONGEST_CREDIT = 100;

	public PhotoBody {
		text = plain("#/text", text, LONGEST_TEXT);
		credit = plain("#/credit", credit, LONGEST_CREDIT);
	}

	/**
	 * The words without blanks around them; null where nothing is left.
	 */
	static @Nullable String plain(String pointer, @Nullable String words, int longest) {
		if (words == null || words.isBlank()) {
			return null;
		}
		String plain = words.strip();
		if (plain.length() > longest) {
			throw Problem.invalid(pointer, "wrong-length",
					"must have at most %d characters, but has %d".formatted(longest, plain.length()));
		}
		if (plain.chars().anyMatch((one) -> one < ' ' && one != '\n' && one != '\r' && one != '\t')) {
			throw Problem.invalid(pointer, "wrong-form", "must be plain text");
		}
		return plain;
	}

}
