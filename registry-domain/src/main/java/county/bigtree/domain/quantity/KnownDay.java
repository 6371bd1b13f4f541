package county.bigtree.domain.quantity;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Year;
import java.time.YearMonth;

/**
 * A day known to the day, or only to its month or year. What holds from it holds from its
 * last day.
 *
 * @param last the last day that it can be
 * @param precision how exactly it is known
 */
public record KnownDay(LocalDate last, Precision precision) {

	public KnownDay {
		LocalDate expected = switch (precision) {
			case DAY -> last;
			case MONTH -> YearMonth.from(last).atEndOfMonth();
			case YEAR -> Year.from(last).atMonth(12).atEndOfMonth();
		};
		if (!expected.equals(last)) {
			throw new IllegalArgumentException("last must be the last day of its " + precision + ", was " + last);
		}
	}

	public static KnownDay of(LocalDate day) {
		return new KnownDay(day, Precision.DAY);
	}

	/**
	 * The day by the last that it can be and how exactly it is known.
	 */
	public static KnownDay endingOn(LocalDate last, Precision precision) {
		return new KnownDay(last, precision);
	}

	/**
	 * Reads {@code 2026-05-02}, {@code 2026-05} or {@code 2026} (ISO 8601-1:2019, 5.2.2,
	 * dates with reduced precision).
	 * @throws DateTimeException where the text is none of them
	 */
	public static KnownDay parse(String text) {
		return switch (text.length()) {
			case 4 -> new KnownDay(Year.parse(text).atMonth(12).atEndOfMonth(), Precision.YEAR);
			case 7 -> new KnownDay(YearMonth.parse(text).atEndOfMonth(), Precision.MONTH);
			default -> of(LocalDate.parse(text));
		};
	}

	/**
	 * As it is read.
	 */
	@Override
	public String toString() {
		return switch (this.precision) {
			case DAY -> this.last.toString();
			case MONTH -> YearMonth.from(this.last).toString();
			case YEAR -> Year.from(this.last).toString();
		};
	}

	/**
	 * How exactly a day is known.
	 */
	public enum Precision {

		DAY, MONTH, YEAR

	}

}
