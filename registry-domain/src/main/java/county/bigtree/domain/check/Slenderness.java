package county.bigtree.domain.check;

import county.bigtree.domain.quantity.Figures;

/**
 * Height over diameter in like units, the usual figure for how slim a stem is.
 */
public final class Slenderness {

	private static final double INCHES_IN_FOOT = 12;

	private Slenderness() {
	}

	public static double of(double girthInches, double heightFeet) {
		return INCHES_IN_FOOT * Math.PI * Figures.positive("heightFeet", heightFeet)
				/ Figures.positive("girthInches", girthInches);
	}

}
