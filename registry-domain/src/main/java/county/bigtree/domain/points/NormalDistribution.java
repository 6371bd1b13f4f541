package county.bigtree.domain.points;

/**
 * The standard normal distribution. Summed from the series of G. Marsaglia, "Evaluating
 * the Normal Distribution", Journal of Statistical Software 11 (2004), which is good to
 * about 1e-15 in absolute terms.
 */
public final class NormalDistribution {

	/** From here on nothing is left of the tail in double precision. */
	private static final double FAR = 8.3;

	private static final double HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);

	private NormalDistribution() {
	}

	/** The probability of a value of at most {@code z}; NaN for NaN. */
	public static double probabilityUpTo(double z) {
		if (z < -FAR) {
			return 0;
		}
		if (z > FAR) {
			return 1;
		}
		double sum = z;
		double term = z;
		double previous = 0;
		for (int i = 3; sum != previous; i += 2) {
			previous = sum;
			term *= z * z / i;
			sum += term;
		}
		return clamped(0.5 + sum * Math.exp(-0.5 * z * z - HALF_LOG_TWO_PI));
	}

	private static double clamped(double probability) {
		return Math.max(0, Math.min(1, probability));
	}

}
