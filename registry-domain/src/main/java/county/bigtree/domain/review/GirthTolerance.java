package county.bigtree.domain.review;

import county.bigtree.domain.quantity.Figures;

/**
 * The tolerance of the Forest Inventory and Analysis core field guide (5.9.2, from
 * memory): 0.1 in of diameter for each begun 20 in of it, for round forest stems.
 */
public final class GirthTolerance {

	private static final double STEP_INCHES = 20;

	private static final double PER_STEP = 0.1;

	private GirthTolerance() {
	}

	/** On the girth, in inches, for a stem of this diameter. */
	public static double inches(double diameterInches) {
		double steps = Math.ceil(Figures.positive("diameterInches", diameterInches) / STEP_INCHES);
		return Math.PI * PER_STEP * steps;
	}

}
