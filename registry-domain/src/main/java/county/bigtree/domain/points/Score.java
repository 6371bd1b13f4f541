package county.bigtree.domain.points;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;

/**
 * Points with their standard uncertainty, in points: finite and not negative.
 */
public record Score(Points points, double standardUncertainty) {

	public Score {
		Figures.notNegative("standardUncertainty", standardUncertainty);
	}

	/** Takes the three figures as independent (JCGM 100:2008, 5.1.2). */
	public static Score of(Estimate girthInches, Estimate heightFeet, Estimate crownSpreadFeet) {
		Points points = Points.of(girthInches.value(), heightFeet.value(), crownSpreadFeet.value());
		return new Score(points, standardUncertainty(girthInches.standardUncertainty(),
				heightFeet.standardUncertainty(), crownSpreadFeet.standardUncertainty()));
	}

	/**
	 * Of figures that share a reading (JCGM 100:2008, 5.2.2, equation 16).
	 */
	public static Score of(Estimate girthInches, Estimate heightFeet, Estimate crownSpreadFeet,
			Correlations correlations) {
		if (correlations.equals(Correlations.NONE)) {
			return of(girthInches, heightFeet, crownSpreadFeet);
		}
		Points points = Points.of(girthInches.value(), heightFeet.value(), crownSpreadFeet.value());
		return new Score(points, correlations.combined(girthInches.standardUncertainty(),
				heightFeet.standardUncertainty(), crownSpreadFeet.standardUncertainty() / 4));
	}

	/** Of the sum, from those of its parts in inches, feet and feet. */
	public static double standardUncertainty(double girthInches, double heightFeet, double crownSpreadFeet) {
		double girth = Figures.notNegative("girthInchesStandardUncertainty", girthInches);
		double height = Figures.notNegative("heightFeetStandardUncertainty", heightFeet);
		double quarter = Figures.notNegative("crownSpreadFeetStandardUncertainty", crownSpreadFeet) / 4;
		return Math.sqrt(girth * girth + height * height + quarter * quarter);
	}

}
