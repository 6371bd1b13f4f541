package county.bigtree.domain.quantity;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;

/**
 * Reads lengths as people write them: {@code 3.75 m}, {@code 12' 4"},
 * {@code 12 ft 4 1/2 in}, {@code 3,75}. A comma or a point parts the decimals or the
 * thousands, as the number itself shows; {@code 1,234}, which may be either, is refused.
 * How lengths are written is common practice, no source.
 */
public final class LengthText {

	/** Longer than anything that is a length. */
	private static final int LONGEST = 60;

	private static final String NUMBER = "([+-]?[0-9.,]*[0-9](?:[.,](?=\\s|$|\\p{L}))?)";

	private static final String AMOUNT = NUMBER + "(?:[ -]([0-9]{1,3})/([0-9]{1,3}))?";

	private static final String UNIT = "([^0-9\\s.,;+-][^0-9.,;+-]*?\\.?)?";

	private static final Pattern WRITTEN = Pattern
		.compile("%1$s\\s*%2$s(?:\\s*(?:[,;-]|\\band\\b)?\\s*%1$s\\s*%2$s)?".formatted(AMOUNT, UNIT));

	private static final Pattern FRACTION_ALONE = Pattern.compile("^([+-]?)([0-9]{1,3}/[0-9]{1,3}.*)");

	private static final Pattern AMBIGUOUS = Pattern.compile("[+-]?[1-9][0-9]{0,2},[0-9]{3}");

	private static final Pattern GROUPED = Pattern
		.compile("[+-]?[1-9][0-9]{0,2}(?:(?:,[0-9]{3})+(?:\\.[0-9]+)?|(?:\\.[0-9]{3})+,[0-9]+|(?:,[0-9]{3}){2,})");

	private static final Pattern DECIMAL = Pattern.compile("[+-]?[0-9]{0,12}(?:[.,][0-9]{1,12})?");

	private static final Map<String, String> MARKS = Map.of("\u2032", "'", "\u2019", "'", "\u2018", "'", "\u00b4", "'",
			"\u2033", "\"", "\u201d", "\"", "\u201c", "\"", "\u2212", "-", "\u00a0", " ");

	private static final Map<String, String> FRACTIONS = Map.of("\u00bd", "1/2", "\u00bc", "1/4", "\u00be", "3/4",
			"\u215b", "1/8", "\u215c", "3/8", "\u215d", "5/8", "\u215e", "7/8", "\u2153", "1/3", "\u2154", "2/3");

	private static final Map<String, LengthUnit> UNITS = units();

	private LengthText() {
	}

	/**
	 * Reads an entry.
	 * @param unit of a number that brings none
	 * @throws InvalidReadingException which says what was not understood
	 */
	public static Length read(String entry, LengthUnit unit) {
		Matcher written = WRITTEN.matcher(plain(entry));
		if (entry.length() > LONGEST || !written.matches()) {
			throw fault("must be a length, such as 12.5, 3.75 m or 12 ft 4 in, but was " + shortened(entry));
		}
		double first = amount(written.group(1), written.group(2), written.group(3));
		LengthUnit firstUnit = unit(written.group(4));
		if (written.group(5) == null) {
			return Length.of(first, (firstUnit != null) ? firstUnit : unit);
		}
		if (firstUnit != LengthUnit.FT || !isInches(written.group(8))) {
			throw fault("is understood in two parts only as feet and inches, but was " + entry);
		}
		return Length.feetAndInches(first, amount(written.group(5), written.group(6), written.group(7)));
	}

	private static boolean isInches(@Nullable String word) {
		LengthUnit unit = unit(word);
		return unit == null || unit == LengthUnit.IN;
	}

	private static double amount(String number, @Nullable String over, @Nullable String under) {
		double whole = number(number);
		if (over == null || under == null) {
			return whole;
		}
		double part = Double.parseDouble(over) / Double.parseDouble(under);
		if (!(part < 1) || whole != Math.rint(whole)) {
			throw fault("has a fraction that is not one: %s %s/%s".formatted(number, over, under));
		}
		return (number.startsWith("-")) ? whole - part : whole + part;
	}

	/**
	 * Reads a number whose comma or point may part its decimals or its thousands.
	 * @throws InvalidReadingException which says what was not understood
	 */
	public static double number(String written) {
		String number = (written.endsWith(".") || written.endsWith(",")) ? written.substring(0, written.length() - 1)
				: written;
		if (AMBIGUOUS.matcher(number).matches()) {
			throw fault("may be %s or %s: the comma in %s parts thousands or decimals"
				.formatted(number.replace(",", ""), number.replace(',', '.'), number));
		}
		if (GROUPED.matcher(number).matches()) {
			boolean pointForDecimals = number.lastIndexOf(',') < number.lastIndexOf('.') || number.indexOf('.') < 0;
			return Double
				.parseDouble(pointForDecimals ? number.replace(",", "") : number.replace(".", "").replace(',', '.'));
		}
		if (!DECIMAL.matcher(number).matches() || number.chars().noneMatch(Character::isDigit)) {
			throw fault("has a number that is not one: " + written);
		}
		return Double.parseDouble(number.replace(',', '.'));
	}

	private static @Nullable LengthUnit unit(@Nullable String word) {
		if (word == null || word.isBlank()) {
			return null;
		}
		String plain = word.strip().toLowerCase(Locale.ROOT);
		LengthUnit unit = UNITS.get(plain.endsWith(".") ? plain.substring(0, plain.length() - 1) : plain);
		if (unit == null) {
			throw fault("has a unit that is not known: " + word.strip());
		}
		return unit;
	}

	private static String plain(String entry) {
		String text = entry.strip();
		for (Map.Entry<String, String> mark : MARKS.entrySet()) {
			text = text.replace(mark.getKey(), mark.getValue());
		}
		text = text.replace("''", "\"");
		for (Map.Entry<String, String> fraction : FRACTIONS.entrySet()) {
			text = text.replace(fraction.getKey(), " " + fraction.getValue());
		}
		// So that half an inch alone is nothing and a half.
		return FRACTION_ALONE.matcher(text.strip().replace("  ", " ")).replaceFirst("$10 $2");
	}

	private static Map<String, LengthUnit> units() {
		Map<String, LengthUnit> units = new HashMap<>();
		String words = "in in inch inches \";ft ft foot feet ';yd yd yard yards;"
				+ "mm mm millimetre millimetres millimeter millimeters;cm cm centimetre centimetres centimeter centimeters;"
				+ "m m metre metres meter meters";
		for (String of : words.split(";")) {
			String[] each = of.split(" ");
			LengthUnit unit = LengthUnit.find(each[0]).orElseThrow();
			for (String word : each) {
				units.put(word, unit);
			}
		}
		return units;
	}

	private static String shortened(String entry) {
		return (entry.length() <= LONGEST) ? entry : entry.substring(0, LONGEST) + "\u2026";
	}

	private static InvalidReadingException fault(String detail) {
		return new InvalidReadingException("", Flaw.OUT_OF_RANGE, detail);
	}

}
