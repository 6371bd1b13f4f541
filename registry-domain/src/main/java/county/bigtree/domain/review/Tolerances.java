package county.bigtree.domain.review;

import county.bigtree.domain.quantity.Figures;

/**
 * How far a filed and a checked figure may lie apart and still agree. The rulebook may
 * set others than {@link #STANDARD}.
 *
 * @param girthInchesPerStep of diameter, for each begun 20 in of it
 * @param girthShare of the checked girth, for stems that are no forest poles, if more
 * @param heightShare of the checked height
 * @param spreadShare of the checked spread
 * @param spreadFeet if more than the share
 */
public record Tolerances(double girthInchesPerStep, double girthShare, double heightShare, double spreadShare,
		double spreadFeet) {

	/**
	 * Girth and height as the Forest Inventory and Analysis core field guide has them
	 * (5.9.2 and 5.14, from memory); one percent for form, and the spread, are proposals:
	 * no published tolerance was found.
	 */
	public static final Tolerances STANDARD = new Tolerances(0.1, 0.01, 0.1, 0.1, 4);

	private static final double STEP_INCHES = 20;

	public Tolerances {
		Figures.notNegative("girthInchesPerStep", girthInchesPerStep);
		Figures.within("girthShare", girthShare, 0, 1, "from 0 to 1");
		Figures.within("heightShare", heightShare, 0, 1, "from 0 to 1");
		Figures.within("spreadShare", spreadShare, 0, 1, "from 0 to 1");
		Figures.notNegative("spreadFeet", spreadFeet);
	}

	/** By the rule for round stems alone: on the girth, for a stem of this diameter. */
	public double roundStemInches(double diameterInches) {
		double steps = Math.ceil(Figures.positive("diameterInches", diameterInches) / STEP_INCHES);
		return Math.PI * this.girthInchesPerStep * steps;
	}

	double girthInches(double checkedInches) {
		return Math.max(roundStemInches(checkedInches / Math.PI), this.girthShare * checkedInches);
	}

	double heightFeet(double checkedFeet) {
		return this.heightShare * checkedFeet;
	}

	double spreadFeet(double checkedFeet) {
		return Math.max(this.spreadShare * checkedFeet, this.spreadFeet);
	}

}
