package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.Figures;

/**
 * Where on the stem the girth is taken, as the Forest Inventory and Analysis core field
 * guide has it for special situations (5.9.2, from memory). Heights in feet above ground.
 */
public final class MeasuringPoint {

	public static final double BREAST_HEIGHT_FEET = 4.5;

	private static final double SEPARATE_TREES_BELOW = 1;

	private static final double ABOVE_THE_UNION = 3.5;

	private static final double SWELL_MATTERS_FROM = 3;

	private static final double ABOVE_THE_SWELL = 1.5;

	private MeasuringPoint() {
	}

	/**
	 * On a stem that forks where the piths meet at this height: below 1 ft two trees,
	 * each at 4.5 ft; below 4.5 ft separate stems, 3.5 ft above the union; above, one
	 * stem, at 4.5 ft or just below the swelling.
	 */
	public static double onForkedStem(double pithUnionFeet) {
		double union = Figures.notNegative("pithUnionFeet", pithUnionFeet);
		boolean forkedBelow = union >= SEPARATE_TREES_BELOW && union < BREAST_HEIGHT_FEET;
		return forkedBelow ? union + ABOVE_THE_UNION : BREAST_HEIGHT_FEET;
	}

	/**
	 * On a stem whose buttresses end at this height: 1.5 ft above, if at 3 ft or more.
	 */
	public static double aboveSwell(double swellEndFeet) {
		double end = Figures.notNegative("swellEndFeet", swellEndFeet);
		return (end >= SWELL_MATTERS_FROM) ? end + ABOVE_THE_SWELL : BREAST_HEIGHT_FEET;
	}

	/**
	 * How much lower the point midway between the uphill and downhill marks lies than the
	 * uphill one, in the unit of the diameter.
	 */
	public static double midslopeDrop(double diameter, double slopeTangent) {
		return Figures.positive("diameter", diameter) / 2 * Figures.notNegative("slopeTangent", slopeTangent);
	}

}
