package county.bigtree.domain.review;

import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * By how much a figure may have changed between two visits without either being wrong: in
 * inches for a girth, in feet for the others.
 *
 * @param least negative where it may have become less
 * @param most not below the least
 */
public record GrowthWindow(double least, double most) {

	/** At one time, or so near that nothing grew. */
	public static final GrowthWindow NONE = new GrowthWindow(0, 0);

	/** In inches: bark that fell, or dried in between (proposal). */
	private static final double SHRINKAGE = 0.5;

	private static final double SAME_SEASON_YEARS = 1;

	public GrowthWindow {
		Figures.finite("least", least);
		if (!(Figures.finite("most", most) >= least)) {
			throw new InvalidReadingException("most", Flaw.OUT_OF_RANGE,
					"must not be below the least of " + Figures.plain(least) + " but was " + Figures.plain(most));
		}
	}

	/**
	 * Of a girth: rings as wide as the species makes them at most add 2 π of their width.
	 * Nothing within a year.
	 * @param radialInchesPerYear widest rings, 0 or more
	 * @param years from the filed to the checked figure, 0 or more
	 */
	public static GrowthWindow ofGirth(double radialInchesPerYear, double years) {
		double widest = Figures.notNegative("radialInchesPerYear", radialInchesPerYear);
		return within(Figures.notNegative("years", years)) ? NONE
				: new GrowthWindow(-SHRINKAGE, 2 * Math.PI * widest * years);
	}

	/**
	 * Of a height or a spread that gains so much a year at most. Nothing within a year.
	 */
	public static GrowthWindow ofFeet(double feetPerYear, double years) {
		double fastest = Figures.notNegative("feetPerYear", feetPerYear);
		return within(Figures.notNegative("years", years)) ? NONE : new GrowthWindow(0, fastest * years);
	}

	/** The same where the figure compared is the earlier one. */
	GrowthWindow backwards() {
		// 0 less a limit, for a limit of 0 must not become -0
		return new GrowthWindow(0 - this.most, 0 - this.least);
	}

	/** What is left of a difference once growth has explained what it can. */
	double unexplained(double gain) {
		return (gain > this.most) ? gain - this.most : Math.min(0, gain - this.least);
	}

	private static boolean within(double years) {
		return years <= SAME_SEASON_YEARS;
	}

}
