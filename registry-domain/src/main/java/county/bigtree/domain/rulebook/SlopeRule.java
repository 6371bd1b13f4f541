package county.bigtree.domain.rulebook;

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
	MIDSLOPE

}
