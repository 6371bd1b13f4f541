package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

import county.bigtree.domain.quantity.KnownDay;

/**
 * How days, points and names are written in a sentence.
 */
final class Words {

	private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

	private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM uuuu", Locale.ENGLISH);

	// Spoken with a consonant first: "a European beech".
	private static final Pattern VOWEL_SPOKEN = Pattern.compile("(?i)(?!eu|uni|one)[aeiou].*");

	private Words() {
	}

	static String day(LocalDate day) {
		return DAY.format(day);
	}

	/**
	 * A day, month or year with its preposition: "on 3 May 2026", "in May 2026", "in
	 * 2026".
	 */
	static String on(KnownDay day) {
		return switch (day.precision()) {
			case DAY -> "on " + day(day.last());
			case MONTH -> "in " + MONTH.format(day.last());
			case YEAR -> "in " + day.last().getYear();
		};
	}

	/**
	 * Points as they are shown: whole, half up.
	 */
	static String points(BigDecimal points) {
		return points.setScale(0, RoundingMode.HALF_UP).toPlainString();
	}

	/**
	 * The name with its article.
	 */
	static String a(String name) {
		return (VOWEL_SPOKEN.matcher(name).matches() ? "an " : "a ") + name;
	}

	static String possessive(String name) {
		return name + (name.endsWith("s") ? "'" : "'s");
	}

	/**
	 * The names in a row: "A, B and C".
	 */
	static String list(List<String> names) {
		int last = names.size() - 1;
		return (last < 1) ? String.join("", names)
				: String.join(", ", names.subList(0, last)) + " and " + names.get(last);
	}

	/**
	 * A rank: 1st, 2nd, 3rd, 11th.
	 */
	static String ordinal(int number) {
		int tens = number % 100;
		if (tens >= 11 && tens <= 13) {
			return number + "th";
		}
		return number + switch (number % 10) {
			case 1 -> "st";
			case 2 -> "nd";
			case 3 -> "rd";
			default -> "th";
		};
	}

}
