package county.bigtree.registry.openness.web;

import java.util.function.Function;

import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.openness.Box;
import county.bigtree.registry.openness.Interval;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

/**
 * Reads the parameters that OGC API - Features gives every collection.
 */
final class FeaturesAsked {

	static final int BY_DEFAULT = 100;

	static final int MOST = 1000;

	/** What stands in a cursor for features that were not counted. */
	private static final long UNCOUNTED = -1;

	private FeaturesAsked() {
	}

	/** A limit beyond the most is the most (7.15.2). */
	static int limit(@Nullable String given) {
		if (given == null) {
			return BY_DEFAULT;
		}
		if (!given.matches("0*[1-9][0-9]{0,8}")) {
			throw wrong("limit", "it must be a whole number of at least 1");
		}
		return Math.min(Integer.parseInt(given), MOST);
	}

	static @Nullable Box box(@Nullable String given) {
		return (given != null) ? read("bbox", given, Box::parse) : null;
	}

	static Interval interval(@Nullable String given) {
		return (given != null) ? read("datetime", given, Interval::parse) : Interval.ALL;
	}

	/** Where a page begins, and how many the first counted. */
	static String cursor(String list, Object last, @Nullable Integer matched) {
		return Cursor.of(list, last, (matched != null) ? matched : UNCOUNTED).text();
	}

	static @Nullable Cursor cursor(String list, @Nullable String given) {
		return (given != null) ? Cursor.parse(list, 2, given) : null;
	}

	static @Nullable Integer matched(Cursor cursor) {
		long matched = cursor.number(1);
		return (matched >= 0 && matched <= Integer.MAX_VALUE) ? (int) matched : null;
	}

	private static <T> T read(String parameter, String given, Function<String, T> reader) {
		try {
			return reader.apply(given);
		}
		catch (IllegalArgumentException ex) {
			throw wrong(parameter, String.valueOf(ex.getMessage()));
		}
	}

	private static Problem wrong(String parameter, String why) {
		return Problem.of(ProblemType.INVALID_PARAMETER, "The parameter '" + parameter + "' is wrong: " + why + ".")
			.with("parameter", parameter);
	}

}
