package county.bigtree.domain.measuring;

/**
 * Rules of JCGM 100:2008, "Guide to the expression of uncertainty in measurement", for
 * independent contributions.
 */
public final class Uncertainty {

	private Uncertainty() {
	}

	/** Root of the sum of squares (5.1.2, equation 10). */
	public static double combined(double... contributions) {
		double squares = 0;
		for (double contribution : contributions) {
			squares += contribution * contribution;
		}
		return Math.sqrt(squares);
	}

	/**
	 * The Welch-Satterthwaite formula (G.4.1, equation G.2b); one for each contribution.
	 */
	public static double effectiveDegreesOfFreedom(double[] contributions, double[] degreesOfFreedom) {
		double sum = 0;
		for (int i = 0; i < contributions.length; i++) {
			sum += Math.pow(contributions[i], 4) / degreesOfFreedom[i];
		}
		return Math.pow(combined(contributions), 4) / sum;
	}

}
