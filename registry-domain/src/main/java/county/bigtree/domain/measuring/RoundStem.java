package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.Figures;

/**
 * Girth, diameter and radius of a stem taken as a circle.
 */
public final class RoundStem {

	private static final double INCHES_IN_FOOT = 12;

	private RoundStem() {
	}

	/** In the unit of the diameter. */
	public static double girth(double diameter) {
		return Math.PI * Figures.positive("diameter", diameter);
	}

	/** In the unit of the girth. */
	public static double diameter(double girth) {
		return Figures.positive("girth", girth) / Math.PI;
	}

	public static double radiusFeet(double girthInches) {
		return diameter(girthInches) / 2 / INCHES_IN_FOOT;
	}

}
