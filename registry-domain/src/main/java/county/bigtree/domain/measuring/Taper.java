package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * Girth at a height that can't be taped, between two girths below and above it, taken as
 * changing evenly. Never beyond them, and they lie at most 2 ft apart (proposal).
 */
public final class Taper {

	static final double FARTHEST_APART = 2;

	private Taper() {
	}

	/**
	 * Girths in inches, heights in feet above ground.
	 * @throws InvalidReadingException unless the height wanted lies between the two
	 */
	public static Estimate girthAt(double heightFeet, Estimate lowerGirth, Estimate lowerHeight, Estimate upperGirth,
			Estimate upperHeight) {
		return figure(heightFeet, lowerGirth, lowerHeight, upperGirth, upperHeight).estimate();
	}

	static Figure figure(double heightFeet, Estimate lowerGirth, Estimate lowerHeight, Estimate upperGirth,
			Estimate upperHeight) {
		double below = heightFeet - lowerHeight.value();
		double above = upperHeight.value() - heightFeet;
		if (!(below > 0 && above > 0)) {
			throw new InvalidReadingException((below > 0) ? "upperHeight" : "lowerHeight", Flaw.OUT_OF_RANGE,
					"must leave the height wanted, " + Figures.plain(heightFeet) + " ft, between the two taped");
		}
		double apart = below + above;
		if (apart > FARTHEST_APART) {
			throw new InvalidReadingException("upperHeight", Flaw.OUT_OF_RANGE,
					"must be at most 2 ft above the lower one");
		}
		double taper = (upperGirth.value() - lowerGirth.value()) / apart;
		Budget budget = Budget.of(Budget.term("C1", above / apart, lowerGirth),
				Budget.term("C2", below / apart, upperGirth), Budget.term("h1", -taper * above / apart, lowerHeight),
				Budget.term("h2", -taper * below / apart, upperHeight));
		return Figure.girth(lowerGirth.value() + taper * below, budget);
	}

}
