package county.bigtree.domain.check;

import county.bigtree.domain.quantity.Figures;
import org.jspecify.annotations.Nullable;

/**
 * How much a girth grows with the yearly rings: 2 π times the radial increment.
 */
public final class GirthGrowth {

	private GirthGrowth() {
	}

	/**
	 * The widest rings to expect of a species in a forest, in inches a year, by its
	 * growth group; of the fastest where it is in none.
	 */
	public static double widestRingInches(@Nullable String scientificName) {
		return GrowthGroup.of(scientificName).ringInches();
	}

	/** In inches, for a ring width in inches a year. */
	public static double inches(double radialInchesPerYear, double years) {
		return 2 * Math.PI * Figures.notNegative("radialInchesPerYear", radialInchesPerYear)
				* Figures.notNegative("years", years);
	}

}
