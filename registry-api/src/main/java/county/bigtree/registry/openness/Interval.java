package county.bigtree.registry.openness;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

import org.jspecify.annotations.Nullable;

/**
 * An instant, a day or a span of time, its ends included, as {@code datetime} gives it
 * (OGC API - Features, 7.15.4; RFC 3339, 5.6). Days are those of Coordinated Universal
 * Time.
 *
 * @param from null where it has no beginning
 * @param to null where it has no end
 */
public record Interval(@Nullable Instant from, @Nullable Instant to) {

	/** From and to all time. */
	public static final Interval ALL = new Interval(null, null);

	public Interval {
		if (from != null && to != null && from.isAfter(to)) {
			throw new IllegalArgumentException("it must not end before it begins, but is " + from + "/" + to);
		}
	}

	/**
	 * Reads {@code 2026-05-02}, {@code 2026-05-02T10:00:00Z}, or two of these, or
	 * {@code ..} or nothing for an open end, with a slash between.
	 * @throws IllegalArgumentException where it is none of that
	 */
	public static Interval parse(String text) {
		String[] ends = text.split("/", -1);
		if (ends.length > 2) {
			throw new IllegalArgumentException("it must have one slash at most");
		}
		if (ends.length == 1) {
			return new Interval(instant(text, false), instant(text, true));
		}
		return new Interval(open(ends[0]) ? null : instant(ends[0], false),
				open(ends[1]) ? null : instant(ends[1], true));
	}

	private static boolean open(String end) {
		return end.isEmpty() || end.equals("..");
	}

	private static Instant instant(String text, boolean last) {
		try {
			if (text.length() > 10) {
				return OffsetDateTime.parse(text).toInstant();
			}
			Instant start = LocalDate.parse(text).atStartOfDay(ZoneOffset.UTC).toInstant();
			return last ? start.plus(1, ChronoUnit.DAYS).minus(1, ChronoUnit.MICROS) : start;
		}
		catch (DateTimeException ex) {
			throw new IllegalArgumentException("'" + text + "' is neither a day nor an instant", ex);
		}
	}

	@Nullable LocalDate firstDay() {
		return day(this.from);
	}

	@Nullable LocalDate lastDay() {
		return day(this.to);
	}

	private static @Nullable LocalDate day(@Nullable Instant instant) {
		return (instant != null) ? instant.atOffset(ZoneOffset.UTC).toLocalDate() : null;
	}

}
