package county.bigtree.domain.quantity;

import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * An angle of elevation as it was entered: positive above the level of the eye, negative
 * below, strictly between straight down and straight up. One sighted several times is the
 * mean of its sights, in the unit entered; its uncertainty is that of a repeated length
 * (see {@link RepeatedLength}).
 *
 * @param value in degrees, or in percent (a hundred times the tangent)
 * @param unit of the value, the sights and the uncertainty
 * @param standardUncertainty stated by the measurer, or null
 * @param sights none, or from 2 to 1000 whose mean is the value
 */
public record Angle(double value, AngleUnit unit, @Nullable Double standardUncertainty, List<Double> sights) {

	/**
	 * Standard uncertainty of a hand clinometer's degree scale, in degrees: a proposal,
	 * no published figure was found.
	 */
	public static final double USUAL_DEGREES = 0.25;

	/** Of its percent scale, in percent: a proposal. */
	public static final double USUAL_PERCENT = 1;

	private static final double MOST_PERCENT = 100_000;

	private static final int MOST_SIGHTS = 1000;

	public Angle {
		sights = List.copyOf(sights);
		check("value", value, unit);
		StatedUncertainty.check(standardUncertainty, (unit == AngleUnit.DEG) ? 90 : MOST_PERCENT);
		if (!sights.isEmpty() && value != mean(sights)) {
			throw new InvalidReadingException("value", Flaw.CONTRADICTION, "must be the mean of the sights");
		}
	}

	public Angle(double value, AngleUnit unit, @Nullable Double standardUncertainty) {
		this(value, unit, standardUncertainty, List.of());
	}

	/** One sighted several times. */
	public static Angle repeated(List<Double> sights, AngleUnit unit, @Nullable Double standardUncertainty) {
		if (sights.size() < 2 || sights.size() > MOST_SIGHTS) {
			throw new InvalidReadingException("repeats", Flaw.WRONG_COUNT,
					"must be from 2 to " + MOST_SIGHTS + " but was " + sights.size());
		}
		for (int i = 0; i < sights.size(); i++) {
			check("repeats/" + i, sights.get(i), unit);
		}
		return new Angle(mean(sights), unit, standardUncertainty, sights);
	}

	private static double mean(List<Double> sights) {
		return Repeats.mean(sights.stream().mapToDouble(Double::doubleValue).toArray());
	}

	private static double check(String path, double value, AngleUnit unit) {
		return (unit == AngleUnit.DEG)
				? Figures.within(path, value, Math.nextUp(-90.0), Math.nextDown(90.0), "between -90 and 90 degrees")
				: Figures.within(path, value, -MOST_PERCENT, MOST_PERCENT, "between -100000 and 100000 percent");
	}

	public static Angle degrees(double value) {
		return new Angle(value, AngleUnit.DEG, null);
	}

	public static Angle degrees(double value, double standardUncertainty) {
		return new Angle(value, AngleUnit.DEG, standardUncertainty);
	}

	public static Angle percent(double value) {
		return new Angle(value, AngleUnit.PCT, null);
	}

	public static Angle percent(double value, double standardUncertainty) {
		return new Angle(value, AngleUnit.PCT, standardUncertainty);
	}

	public double radians() {
		return (this.unit == AngleUnit.DEG) ? Math.toRadians(this.value) : Math.atan(this.value / 100);
	}

	public double degrees() {
		return (this.unit == AngleUnit.DEG) ? this.value : Math.toDegrees(radians());
	}

	/** Read from a percentage without going through the angle. */
	public double tangent() {
		return (this.unit == AngleUnit.PCT) ? this.value / 100 : Math.tan(radians());
	}

	/**
	 * In radians, with the uncertainty stated, else the default; one in percent is turned
	 * by the slope of the arc tangent.
	 */
	public Estimate estimateRadians(double defaultDegrees, double defaultPercent) {
		Estimate entered = entered((this.unit == AngleUnit.DEG) ? defaultDegrees : defaultPercent);
		if (this.unit == AngleUnit.DEG) {
			return new Estimate(radians(), Math.toRadians(entered.standardUncertainty()), entered.degreesOfFreedom());
		}
		double tangent = tangent();
		return new Estimate(radians(), entered.standardUncertainty() / 100 / (1 + tangent * tangent),
				entered.degreesOfFreedom());
	}

	/** In the unit entered. */
	private Estimate entered(double byDefault) {
		double each = (this.standardUncertainty != null) ? this.standardUncertainty : byDefault;
		return this.sights.isEmpty() ? new Estimate(this.value, each) : Repeats
			.estimate(this.sights.stream().mapToDouble(Double::doubleValue).toArray(), each, statesUncertainty());
	}

	public boolean statesUncertainty() {
		return this.standardUncertainty != null;
	}

	/** As a person would write it: {@code -3 deg}, {@code +124 %}. */
	public String text() {
		String sign = (this.value > 0) ? "+" : "";
		// a mean may have no end of decimals
		String number = this.sights.isEmpty() ? Figures.plain(this.value) : Figures.rounded(this.value, 6);
		return sign + number + ((this.unit == AngleUnit.DEG) ? " deg" : " %");
	}

}
