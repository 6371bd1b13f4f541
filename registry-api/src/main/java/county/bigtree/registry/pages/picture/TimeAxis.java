package county.bigtree.registry.pages.picture;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Maps days onto a stretch of a picture, marked at the beginnings of years, or of months
 * where less than two years are shown.
 *
 * @param from the first day shown
 * @param to the last, after it
 */
record TimeAxis(LocalDate from, LocalDate to, double start, double end) {

	private static final int MOST_MARKS = 7;

	private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM yyyy", Locale.US);

	private static final int[] YEARS = { 1, 2, 5, 10, 20, 50, 100 };

	/** A span of at least 60 days that ends on the last day given. */
	static TimeAxis over(LocalDate first, LocalDate last, double start, double end) {
		LocalDate latest = last.minusDays(60);
		return new TimeAxis(first.isBefore(latest) ? first : latest, last, start, end);
	}

	double at(LocalDate day) {
		double days = ChronoUnit.DAYS.between(this.from, day);
		return Drawn.tenth(this.start + days / ChronoUnit.DAYS.between(this.from, this.to) * (this.end - this.start));
	}

	List<Tick> ticks() {
		return (ChronoUnit.MONTHS.between(this.from, this.to) < 24) ? months() : years();
	}

	private List<Tick> years() {
		int every = YEARS[YEARS.length - 1];
		for (int years : YEARS) {
			if ((this.to.getYear() - this.from.getYear()) / years <= MOST_MARKS) {
				every = years;
				break;
			}
		}
		List<Tick> ticks = new ArrayList<>();
		for (int year = this.from.getYear() + 1; year <= this.to.getYear(); year++) {
			if (year % every == 0) {
				ticks.add(new Tick(at(LocalDate.of(year, 1, 1)), String.valueOf(year)));
			}
		}
		return ticks;
	}

	private List<Tick> months() {
		long months = ChronoUnit.MONTHS.between(this.from, this.to);
		int every = (months > 12) ? 6 : (months > 5) ? 3 : 1;
		List<Tick> ticks = new ArrayList<>();
		for (LocalDate day = this.from.withDayOfMonth(1).plusMonths(1); !day.isAfter(this.to); day = day
			.plusMonths(1)) {
			if ((day.getMonthValue() - 1) % every == 0) {
				ticks.add(new Tick(at(day), MONTH.format(day)));
			}
		}
		return ticks;
	}

}
