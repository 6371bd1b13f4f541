package county.bigtree.domain.measuring;

/**
 * The complete elliptic integral of the second kind, by the arithmetic-geometric mean
 * (NIST Handbook of Mathematical Functions, 19.8).
 */
final class EllipticIntegral {

	private static final double ENOUGH = 1e-16;

	private EllipticIntegral() {
	}

	/** E(m) for the parameter m, the square of the modulus, from 0 to 1. */
	static double completeSecondKind(double parameter) {
		if (parameter == 1) {
			return 1;
		}
		double a = 1;
		double g = Math.sqrt(1 - parameter);
		double power = 0.5;
		double sum = power * parameter;
		double c = Math.sqrt(parameter);
		while (c * c > ENOUGH) {
			c = (a - g) / 2;
			double mean = (a + g) / 2;
			g = Math.sqrt(a * g);
			a = mean;
			power *= 2;
			sum += power * c * c;
		}
		return Math.PI / (2 * a) * (1 - sum);
	}

}
