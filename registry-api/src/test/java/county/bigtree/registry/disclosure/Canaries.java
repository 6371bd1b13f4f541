package county.bigtree.registry.disclosure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Values that come up nowhere by chance, and how each may be written.
 */
public final class Canaries {

	/** Away from the middle of its cell of the public grid. */
	public static final double LATITUDE = 40.121357;

	public static final double LONGITUDE = -86.987653;

	private static final String GEOHASH = "0123456789bcdefghjkmnpqrstuvwxyz";

	/** So many characters tell a place to about 150 m. */
	private static final int GEOHASH_LENGTH = 7;

	private final Map<String, Pattern> forbidden = new LinkedHashMap<>();

	public Canaries() {
		forbid("a planted word", "(?i)zqcanary");
		forbid("a decimal latitude", "40[.,]121[34]");
		forbid("a decimal longitude", "86[.,]987[67]");
		forbid("a latitude in minutes", "40\\s*[°d: ]\\s*0?7[.,]28");
		forbid("a longitude in minutes", "86\\s*[°d: ]\\s*59[.,]25");
		forbid("a latitude in seconds", "40\\s*[°d: ]\\s*0?7\\s*['′m: ]\\s*1[67]\\b");
		forbid("a longitude in seconds", "86\\s*[°d: ]\\s*59\\s*['′m: ]\\s*1[56]\\b");
		forbid("a latitude without a point", "401213[56]");
		forbid("a longitude without a point", "869876[56]");
		forbid("a latitude in radians", "0[.,]70025");
		forbid("a geohash", geohash());
	}

	/** A word that holds the mark by which all planted words are found. */
	public static String word(String what) {
		return "zqcanary-" + what;
	}

	public void forbid(String what, String pattern) {
		this.forbidden.put(what, Pattern.compile(pattern));
	}

	/** What of it all the text holds. */
	public List<String> in(String text) {
		List<String> found = new ArrayList<>();
		this.forbidden.forEach((what, pattern) -> {
			java.util.regex.Matcher matcher = pattern.matcher(text);
			if (matcher.find()) {
				found.add("%s (%s)".formatted(what, matcher.group()));
			}
		});
		return found;
	}

	/**
	 * Halving longitude and latitude by turns, five bits a character (common practice, no
	 * source).
	 */
	private static String geohash() {
		double[][] ranges = { { -180, 180 }, { -90, 90 } };
		double[] values = { LONGITUDE, LATITUDE };
		StringBuilder hash = new StringBuilder();
		int bits = 0;
		for (int bit = 0; bit < 5 * GEOHASH_LENGTH; bit++) {
			double[] range = ranges[bit % 2];
			double middle = (range[0] + range[1]) / 2;
			boolean upper = values[bit % 2] >= middle;
			range[upper ? 0 : 1] = middle;
			bits = 2 * bits + (upper ? 1 : 0);
			if (bit % 5 == 4) {
				hash.append(GEOHASH.charAt(bits));
				bits = 0;
			}
		}
		return hash.toString().toLowerCase(Locale.ROOT);
	}

}
