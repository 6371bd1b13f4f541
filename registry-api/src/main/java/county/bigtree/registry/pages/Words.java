package county.bigtree.registry.pages;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.standing.Lead;

/**
 * Writes days, figures and leads as people read them: days in the county's time zone,
 * lengths in the reader's units, a figure with twice its standard uncertainty and no
 * digit more than that deserves.
 */
public record Words(ZoneId zone, Units units) {

	private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.US);

	private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM yyyy", Locale.US);

	public String day(Instant instant) {
		return DAY.format(instant.atZone(this.zone));
	}

	public String day(LocalDate day) {
		return DAY.format(day);
	}

	/** The day of an instant in the county. */
	public LocalDate date(Instant instant) {
		return LocalDate.ofInstant(instant, this.zone);
	}

	/** A day, or the month or year as which alone it is known. */
	public String known(KnownDay day) {
		return switch (day.precision()) {
			case DAY -> DAY.format(day.last());
			case MONTH -> MONTH.format(day.last());
			case YEAR -> day.toString();
		};
	}

	/** Points as they are ranked. */
	public String points(BigDecimal points) {
		return points.setScale(2, RoundingMode.HALF_UP).toPlainString();
	}

	public String points(Points points) {
		return points(points.toBigDecimal());
	}

	/** A quarter of a spread, as it enters the points. */
	public String quarter(BigDecimal feet) {
		return points(feet.divide(BigDecimal.valueOf(4)));
	}

	/** Twice the standard uncertainty of points. */
	public String points(double standardUncertainty) {
		return rounded(2 * standardUncertainty, 1);
	}

	/** A girth without its unit. */
	public String girth(BigDecimal inches) {
		return rounded(this.units.girth(inches.doubleValue()), this.units.metric() ? 0 : 1);
	}

	/** A height or spread without its unit. */
	public String length(BigDecimal feet) {
		return rounded(this.units.length(feet.doubleValue()), 1);
	}

	/** A count with its thousands apart. */
	public String count(long count) {
		return String.format(Locale.US, "%,d", count);
	}

	/** A distance over land with its unit, in two figures at most where it is short. */
	public String distance(double metres) {
		return this.units.distance(metres);
	}

	/** A girth with twice its standard uncertainty. */
	public String girth(BigDecimal inches, BigDecimal standardUncertainty) {
		return girth(inches) + " ± " + rounded(2 * this.units.girth(standardUncertainty.doubleValue()), 1);
	}

	/** A height or spread with twice its standard uncertainty. */
	public String length(BigDecimal feet, BigDecimal standardUncertainty) {
		return length(feet) + " ± " + rounded(2 * this.units.length(standardUncertainty.doubleValue()), 1);
	}

	/** The message that says a lead in words. */
	public String lead(Lead lead) {
		return switch (Comparison.Clarity.of(lead.probability())) {
			case CLEAR -> "lead.clear";
			case LIKELY -> "lead.likely";
			case TOO_CLOSE -> "lead.too-close";
		};
	}

	/** A probability as whole percents, never 100 where it is less. */
	public String percent(double probability) {
		double percent = probability * 100;
		return (percent >= 99.5 && percent < 100) ? rounded(Math.min(percent, 99.9), 1) : rounded(percent, 0);
	}

	private static String rounded(double value, int places) {
		return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
	}

}
