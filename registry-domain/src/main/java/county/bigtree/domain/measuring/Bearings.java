package county.bigtree.domain.measuring;

import java.util.Arrays;
import java.util.List;

import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * Directions in degrees around a stem, once around the circle.
 */
final class Bearings {

	private static final double CIRCLE = 360;

	private static final double HALF = 180;

	private Bearings() {
	}

	static void check(List<Double> bearings, int count) {
		if (bearings.size() != count) {
			throw new InvalidReadingException("bearings", Flaw.WRONG_COUNT,
					"must be one for each of " + count + " radii but was " + bearings.size());
		}
		for (int i = 0; i < count; i++) {
			String path = "bearings/" + i;
			Figures.within(path, bearings.get(i), 0, Math.nextDown(CIRCLE), "from 0 to below 360");
			if (i > 0 && !(bearings.get(i) > bearings.get(i - 1))) {
				throw new InvalidReadingException(path, Flaw.OUT_OF_RANGE, "must be more than the bearing before it, "
						+ Figures.plain(bearings.get(i - 1)) + ", but was " + Figures.plain(bearings.get(i)));
			}
		}
		for (int i = 0; i < count; i++) {
			Figures.within("bearings/" + (i + 1) % count, gapAfter(bearings, i), 0, Math.nextDown(HALF),
					"less than 180 degrees from the bearing before it");
		}
	}

	/** From this bearing on to the next, in degrees. */
	static double gapAfter(List<Double> bearings, int i) {
		boolean last = i == bearings.size() - 1;
		return last ? bearings.get(0) + CIRCLE - bearings.get(i) : bearings.get(i + 1) - bearings.get(i);
	}

	/** Shares of the circle that lie nearest to each bearing; together 1. */
	static double[] weights(List<Double> bearings) {
		int n = bearings.size();
		double[] weights = new double[n];
		for (int i = 0; i < n; i++) {
			weights[i] = (gapAfter(bearings, (i + n - 1) % n) + gapAfter(bearings, i)) / 2 / CIRCLE;
		}
		return weights;
	}

	static double[] evenWeights(int n) {
		double[] weights = new double[n];
		Arrays.fill(weights, 1.0 / n);
		return weights;
	}

}
