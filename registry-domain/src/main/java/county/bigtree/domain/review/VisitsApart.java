package county.bigtree.domain.review;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.quantity.Figures;

/**
 * How long before a check a tree was measured, and how fast one of its species grows at
 * most: so much of a difference is no disagreement.
 *
 * @param years from the filed to the checked visit, negative where the check is older
 * @param radialInchesPerYear widest rings, 0 or more
 * @param feetPerYear of height and of spread, 0 or more
 */
public record VisitsApart(double years, double radialInchesPerYear, double feetPerYear) {

	/** Two visits at one time. */
	public static final VisitsApart NOT_AT_ALL = new VisitsApart(0, 0, 0);

	private static final double DAYS_IN_YEAR = 365.25;

	public VisitsApart {
		Figures.finite("years", years);
		Figures.notNegative("radialInchesPerYear", radialInchesPerYear);
		Figures.notNegative("feetPerYear", feetPerYear);
	}

	public static VisitsApart between(LocalDate filed, LocalDate checked, double radialInchesPerYear,
			double feetPerYear) {
		return new VisitsApart(ChronoUnit.DAYS.between(filed, checked) / DAYS_IN_YEAR, radialInchesPerYear,
				feetPerYear);
	}

	/** By how much the checked figure may exceed the filed one. */
	GrowthWindow growth(Kind kind) {
		double span = Math.abs(this.years);
		GrowthWindow grown = switch (kind) {
			case GIRTH -> GrowthWindow.ofGirth(this.radialInchesPerYear, span);
			case HEIGHT, CROWN -> GrowthWindow.ofFeet(this.feetPerYear, span);
		};
		return (this.years < 0) ? grown.backwards() : grown;
	}

}
