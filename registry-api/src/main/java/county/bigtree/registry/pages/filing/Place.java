package county.bigtree.registry.pages.filing;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.pages.form.Form;
import tools.jackson.databind.node.ObjectNode;

/**
 * A position as it is typed: latitude and longitude in degrees, or both pasted into one
 * field as maps show them.
 */
final class Place {

	static final String LATITUDE = "location.latitude";

	static final String LONGITUDE = "location.longitude";

	static final String ACCURACY = "location.accuracyMetres";

	private static final Pattern PAIR = Pattern.compile("([+-]?[0-9.]+)°?\\s*[,; ]\\s*([+-]?[0-9.]+)°?");

	private static final int POLE = 90;

	private static final int ANTIMERIDIAN = 180;

	private Place() {
	}

	/** Parts what was pasted as a pair. */
	static void part(Form form) {
		Matcher pair = PAIR.matcher(form.value(LATITUDE));
		if (!form.isFilled(LONGITUDE) && pair.matches()) {
			form.put(LATITUDE, pair.group(1)).put(LONGITUDE, pair.group(2));
		}
	}

	static void require(Form form, FilingWords words) {
		require(form, LATITUDE, POLE, words);
		require(form, LONGITUDE, ANTIMERIDIAN, words);
		if (form.isFilled(ACCURACY) && !isWithin(form.value(ACCURACY), BigDecimal.ONE.scaleByPowerOfTen(6), false)) {
			form.refuse(ACCURACY, words.get("filing.accuracy.wrong"));
		}
	}

	private static void require(Form form, String field, int most, FilingWords words) {
		if (!form.isFilled(field)) {
			form.refuse(field, words.get("filing." + field + ".missing"));
		}
		else if (!isWithin(form.value(field), BigDecimal.valueOf(most), true)) {
			form.refuse(field, words.get("filing.degrees.wrong", most));
		}
	}

	private static boolean isWithin(String typed, BigDecimal most, boolean signed) {
		try {
			BigDecimal number = new BigDecimal(typed);
			return number.abs().compareTo(most) <= 0 && (signed || number.signum() > 0);
		}
		catch (NumberFormatException ex) {
			return false;
		}
	}

	static void put(Form form, ObjectNode body, FilingWords words) {
		String none = words.get("filing.number.wrong");
		form.number(body, LATITUDE, none).number(body, LONGITUDE, none).number(body, ACCURACY, none);
	}

}
