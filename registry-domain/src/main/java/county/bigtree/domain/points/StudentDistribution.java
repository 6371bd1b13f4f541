package county.bigtree.domain.points;

import county.bigtree.domain.quantity.Figures;

/**
 * Student's t for whole degrees of freedom, by its finite series (Abramowitz and Stegun
 * 1964, Handbook of Mathematical Functions, 26.7.3 and 26.7.4).
 */
public final class StudentDistribution {

	/** From here on the normal distribution serves, to four digits. */
	private static final int MANY = 2000;

	private StudentDistribution() {
	}

	/** The probability of a value of at most {@code t}. */
	public static double probabilityUpTo(double t, int degreesOfFreedom) {
		Figures.within("degreesOfFreedom", degreesOfFreedom, 1, Integer.MAX_VALUE, "1 or more");
		if (degreesOfFreedom > MANY) {
			return NormalDistribution.probabilityUpTo(t);
		}
		return 0.5 + within(Math.atan(t / Math.sqrt(degreesOfFreedom)), degreesOfFreedom) / 2;
	}

	private static double within(double theta, int degreesOfFreedom) {
		boolean odd = degreesOfFreedom % 2 == 1;
		double cosine = Math.cos(theta);
		double term = odd ? cosine : 1;
		double sum = 0;
		for (int k = odd ? 3 : 2; k <= degreesOfFreedom; k += 2) {
			sum += term;
			term *= cosine * cosine * (k - 1) / k;
		}
		return odd ? 2 / Math.PI * (theta + Math.sin(theta) * sum) : Math.sin(theta) * sum;
	}

	/**
	 * The factor for a two-sided level of confidence (JCGM 100:2008, table G.2), for
	 * effective degrees of freedom truncated to a whole number, as G.4.1 has it.
	 * @param confidence such as 0.95
	 */
	public static double coverageFactor(double confidence, double degreesOfFreedom) {
		Figures.within("confidence", confidence, 0.001, 0.9999, "from 0.001 to 0.9999");
		Figures.within("degreesOfFreedom", Math.min(degreesOfFreedom, MANY + 1), 1, MANY + 1, "1 or more");
		int whole = (int) Math.min(degreesOfFreedom, MANY + 1);
		double wanted = (1 + confidence) / 2;
		double low = 0;
		double high = 10_000;
		for (int i = 0; i < 80; i++) {
			double middle = (low + high) / 2;
			if (probabilityUpTo(middle, whole) < wanted) {
				low = middle;
			}
			else {
				high = middle;
			}
		}
		return (low + high) / 2;
	}

}
