package county.bigtree.domain.quantity;

/**
 * A figure and its standard uncertainty in the same unit, which the holder's name says.
 * Both are finite; the uncertainty is not negative. Shown as plus or minus
 * {@link #expanded()}.
 *
 * @param value best estimate
 * @param standardUncertainty one standard deviation (JCGM 100:2008, 2.3.1)
 */
public record Estimate(double value, double standardUncertainty) {

	/** Coverage factor for a level of confidence of about 95 % (JCGM 100:2008, 6.3.3). */
	public static final double COVERAGE_FACTOR = 2;

	public Estimate {
		Figures.finite("value", value);
		Figures.notNegative("standardUncertainty", standardUncertainty);
	}

	public static Estimate exact(double value) {
		return new Estimate(value, 0);
	}

	public double expanded() {
		return COVERAGE_FACTOR * this.standardUncertainty;
	}

	/** This figure and its uncertainty multiplied by an exact number. */
	public Estimate times(double factor) {
		return new Estimate(this.value * factor, this.standardUncertainty * Math.abs(factor));
	}

}
