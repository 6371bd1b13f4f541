package county.bigtree.domain.rulebook;

import java.math.BigDecimal;

/**
 * How far checked figures may differ from filed ones and still agree.
 *
 * @param girthPercent percent of the checked girth allowed for form, beside the stem-size
 * rule of 0.1 in of diameter for each 20 in; 0 to 100
 * @param heightPercent percent of the checked height, 0 to 100
 * @param crownPercent percent of the checked crown spread, 0 to 100
 * @param crownFeet feet of crown spread always allowed, 0 or more
 */
public record Tolerances(BigDecimal girthPercent, BigDecimal heightPercent, BigDecimal crownPercent,
		BigDecimal crownFeet) {

	/**
	 * Girth 1 %, height 10 %, crown 10 % or 4 ft. The height figure is the usual
	 * objective of forest inventories for total length; the others are proposals.
	 */
	public static final Tolerances DEFAULT = new Tolerances(BigDecimal.ONE, BigDecimal.TEN, BigDecimal.TEN,
			new BigDecimal(4));

	public Tolerances {
		requirePercent("girthPercent", girthPercent);
		requirePercent("heightPercent", heightPercent);
		requirePercent("crownPercent", crownPercent);
		if (crownFeet.signum() < 0) {
			throw new IllegalArgumentException("crownFeet must be 0 or more, was " + crownFeet);
		}
	}

	private static void requirePercent(String name, BigDecimal value) {
		if (value.signum() < 0 || value.compareTo(new BigDecimal(100)) > 0) {
			throw new IllegalArgumentException(name + " must be 0 to 100, was " + value);
		}
	}

}
