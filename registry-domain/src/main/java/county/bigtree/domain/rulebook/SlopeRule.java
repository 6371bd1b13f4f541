package county.bigtree.domain.rulebook;

import county.bigtree.domain.measuring.MeasuringPoint;

/**
 * From which ground breast height is taken on a slope.
 */
public enum SlopeRule {

	/**
	 * 4.5 ft above the ground on the uphill side.
	 */
	UPHILL,

	/**
	 * 4.5 ft above the middle of the uphill and the downhill ground.
	 */
	MIDSLOPE;

	/**
	 * How high above the uphill ground the girth is to be taken.
	 * @param diameterFeet of the stem, more than zero
	 * @param slopeTangent of the ground, 0 or more
	 */
	public double feetAboveUphillGround(double diameterFeet, double slopeTangent) {
		double drop = MeasuringPoint.midslopeDrop(diameterFeet, slopeTangent);
		return MeasuringPoint.BREAST_HEIGHT_FEET - ((this == MIDSLOPE) ? drop : 0);
	}

}
