package county.bigtree.domain.quantity;

import org.jspecify.annotations.Nullable;

/**
 * An angle of elevation as it was entered: positive above the level of the eye, negative
 * below, strictly between straight down and straight up.
 *
 * @param value in degrees, or in percent (a hundred times the tangent)
 * @param unit of the value and of the uncertainty
 * @param standardUncertainty stated by the measurer, or null
 */
public record Angle(double value, AngleUnit unit, @Nullable Double standardUncertainty) {

	/**
	 * Standard uncertainty of a hand clinometer's degree scale, in degrees: a proposal,
	 * no published figure was found.
	 */
	public static final double USUAL_DEGREES = 0.25;

	/** Of its percent scale, in percent: a proposal. */
	public static final double USUAL_PERCENT = 1;

	private static final double MOST_PERCENT = 100_000;

	public Angle {
		if (unit == AngleUnit.DEG) {
			Figures.within("value", value, Math.nextUp(-90.0), Math.nextDown(90.0), "between -90 and 90 degrees");
			StatedUncertainty.check(standardUncertainty, 90);
		}
		else {
			Figures.within("value", value, -MOST_PERCENT, MOST_PERCENT, "between -100000 and 100000 percent");
			StatedUncertainty.check(standardUncertainty, MOST_PERCENT);
		}
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
		if (this.unit == AngleUnit.DEG) {
			double u = (this.standardUncertainty != null) ? this.standardUncertainty : defaultDegrees;
			return new Estimate(radians(), Math.toRadians(u));
		}
		double u = (this.standardUncertainty != null) ? this.standardUncertainty : defaultPercent;
		double tangent = tangent();
		return new Estimate(radians(), u / 100 / (1 + tangent * tangent));
	}

	public boolean statesUncertainty() {
		return this.standardUncertainty != null;
	}

	/** As a person would write it: {@code -3 deg}, {@code +124 %}. */
	public String text() {
		String sign = (this.value > 0) ? "+" : "";
		return sign + Figures.plain(this.value) + ((this.unit == AngleUnit.DEG) ? " deg" : " %");
	}

}
