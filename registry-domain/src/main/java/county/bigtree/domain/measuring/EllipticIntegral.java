package county.bigtree.domain.measuring;

/**
 * The complete elliptic integrals of the first and second kind, by the
 * arithmetic-geometric mean (NIST Handbook of Mathematical Functions, 19.8).
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

	/** K(m), the first kind, for m from 0 to below 1. */
	static double completeFirstKind(double parameter) {
		double a = 1;
		double g = Math.sqrt(1 - parameter);
		while (Math.abs(a - g) > 1e-15 * a) {
			double mean = (a + g) / 2;
			g = Math.sqrt(a * g);
			a = mean;
		}
		return Math.PI / (2 * a);
	}

}
