package county.bigtree.domain.quantity;

/**
 * The mean of several readings of one thing (JCGM 100:2008, 4.2.1 to 4.2.3 and G.4.1).
 */
final class Repeats {

	private Repeats() {
	}

	/** Of two or more: s / √n. */
	static double standardErrorOfMean(double[] readings) {
		int n = readings.length;
		double mean = mean(readings);
		double squares = 0;
		for (double reading : readings) {
			squares += (reading - mean) * (reading - mean);
		}
		return Math.sqrt(squares / (n - 1) / n);
	}

	/**
	 * The mean with its uncertainty and degrees of freedom.
	 * @param each what one reading is unsure by
	 * @param stated whether that is what repeating can't better, and not the instrument's
	 * default, which counts the scatter already
	 */
	static Estimate estimate(double[] readings, double each, boolean stated) {
		double scatter = standardErrorOfMean(readings);
		double u = stated ? Math.hypot(scatter, each) : Math.max(scatter, each);
		boolean fromDefault = !stated && scatter < u;
		double degreesOfFreedom = (scatter == 0 || fromDefault) ? Double.POSITIVE_INFINITY
				: (readings.length - 1) * Math.pow(u / scatter, 4);
		return new Estimate(mean(readings), u, degreesOfFreedom);
	}

	static double mean(double[] readings) {
		double sum = 0;
		for (double reading : readings) {
			sum += reading;
		}
		return sum / readings.length;
	}

}
