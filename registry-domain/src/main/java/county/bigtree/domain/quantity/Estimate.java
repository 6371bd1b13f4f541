package county.bigtree.domain.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A figure and its standard uncertainty in the same unit, which the holder's name says.
 * Both are finite; the uncertainty is not negative. Shown as plus or minus
 * {@link #expanded()}.
 *
 * @param value best estimate
 * @param standardUncertainty one standard deviation (JCGM 100:2008, 2.3.1)
 * @param degreesOfFreedom of the uncertainty, above zero; infinite unless it rests on a
 * few repeats
 */
public record Estimate(double value, double standardUncertainty, double degreesOfFreedom) {

	/** Coverage factor for a level of confidence of about 95 % (JCGM 100:2008, 6.3.3). */
	public static final double COVERAGE_FACTOR = 2;

	public Estimate {
		Figures.finite("value", value);
		Figures.notNegative("standardUncertainty", standardUncertainty);
		if (!(degreesOfFreedom > 0)) {
			throw new InvalidReadingException("degreesOfFreedom", Flaw.NOT_POSITIVE,
					"must be greater than 0 but was " + Figures.plain(degreesOfFreedom));
		}
	}

	public Estimate(double value, double standardUncertainty) {
		this(value, standardUncertainty, Double.POSITIVE_INFINITY);
	}

	public static Estimate exact(double value) {
		return new Estimate(value, 0);
	}

	public double expanded() {
		return COVERAGE_FACTOR * this.standardUncertainty;
	}

	/** This figure and its uncertainty multiplied by an exact number. */
	public Estimate times(double factor) {
		return new Estimate(this.value * factor, this.standardUncertainty * Math.abs(factor), this.degreesOfFreedom);
	}

	/**
	 * Both as they deserve to be written: the expanded uncertainty to two significant
	 * digits (JCGM 100:2008, 7.2.6) and the figure to the same place,
	 * {@code 295.7 ± 4.3 in}.
	 */
	public String shown(String unit) {
		double expanded = expanded();
		if (expanded == 0) {
			return Figures.plain(this.value) + " " + unit;
		}
		BigDecimal rounded = BigDecimal.valueOf(expanded).round(new MathContext(2, RoundingMode.HALF_UP));
		int places = Math.max(0, rounded.scale() + 2 - rounded.precision());
		BigDecimal figure = BigDecimal.valueOf(this.value).setScale(places, RoundingMode.HALF_UP);
		return figure.toPlainString() + " ± " + rounded.setScale(places, RoundingMode.UNNECESSARY).toPlainString() + " "
				+ unit;
	}

}
