package county.bigtree.domain.check;

import county.bigtree.domain.quantity.Figures;

/**
 * How much a girth grows with the yearly rings: 2 π times the radial increment.
 */
public final class GirthGrowth {

	private GirthGrowth() {
	}

	/** In inches, for a ring width in inches a year. */
	public static double inches(double radialInchesPerYear, double years) {
		return 2 * Math.PI * Figures.notNegative("radialInchesPerYear", radialInchesPerYear)
				* Figures.notNegative("years", years);
	}

}
