package county.bigtree.domain.measuring;

import java.util.List;
import java.util.stream.IntStream;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * The ground a crown covers, from the distances of its edge from the stem. Plane
 * geometry. Lengths in feet, areas in square feet.
 *
 * @param radii four or more, none negative
 * @param bearings in degrees, one for each radius, increasing once around the circle
 */
public record CrownOutline(List<Double> radii, List<Double> bearings) {

	private static final int FEWEST = 4;

	private static final double CIRCLE = 360;

	public CrownOutline {
		radii = List.copyOf(radii);
		bearings = List.copyOf(bearings);
		if (radii.size() < FEWEST) {
			throw new InvalidReadingException("radii", Flaw.WRONG_COUNT, "must be 4 or more but was " + radii.size());
		}
		for (int i = 0; i < radii.size(); i++) {
			Figures.notNegative("radii/" + i, radii.get(i));
		}
		Bearings.check(bearings, radii.size());
	}

	public static CrownOutline evenlySpaced(List<Double> radii) {
		int n = radii.size();
		return new CrownOutline(radii, IntStream.range(0, n).mapToObj((i) -> i * CIRCLE / n).toList());
	}

	/** Of the polygon through the ends of the spokes; less than a smooth crown's. */
	public double polygonArea() {
		double doubled = 0;
		for (int i = 0; i < this.radii.size(); i++) {
			double next = this.radii.get((i + 1) % this.radii.size());
			doubled += this.radii.get(i) * next * Math.sin(Math.toRadians(Bearings.gapAfter(this.bearings, i)));
		}
		return doubled / 2;
	}

	/** Of circular sectors, each as wide as its spoke's share of the circle. */
	public double sectorArea() {
		double[] weights = Bearings.weights(this.bearings);
		double mean = 0;
		for (int i = 0; i < weights.length; i++) {
			mean += weights[i] * this.radii.get(i) * this.radii.get(i);
		}
		return Math.PI * mean;
	}

	/** The diameter of the circle with the sectors' area, wherever the stem stands. */
	public double areaPreservingSpread() {
		return 2 * Math.sqrt(sectorArea() / Math.PI);
	}

	/**
	 * The polygon's area with its standard uncertainty from those of the radii, in square
	 * feet.
	 * @param uncertainties in feet, one for each radius, taken as independent
	 * @param common of what all radii share, as the stem's radius that was added to each
	 */
	public Estimate polygonArea(List<Double> uncertainties, double common) {
		int n = this.radii.size();
		double[] contributions = new double[n + 1];
		double together = 0;
		for (int i = 0; i < n; i++) {
			int before = (i + n - 1) % n;
			double sensitivity = (this.radii.get(before) * sine(before) + this.radii.get((i + 1) % n) * sine(i)) / 2;
			contributions[i] = sensitivity * uncertainty(uncertainties, i);
			together += sensitivity;
		}
		contributions[n] = together * Figures.notNegative("common", common);
		return new Estimate(polygonArea(), Uncertainty.combined(contributions));
	}

	/** As {@link #polygonArea(List, double)}, of the sectors. */
	public Estimate sectorArea(List<Double> uncertainties, double common) {
		double[] weights = Bearings.weights(this.bearings);
		double[] contributions = new double[weights.length + 1];
		double together = 0;
		for (int i = 0; i < weights.length; i++) {
			double sensitivity = 2 * Math.PI * weights[i] * this.radii.get(i);
			contributions[i] = sensitivity * uncertainty(uncertainties, i);
			together += sensitivity;
		}
		contributions[weights.length] = together * Figures.notNegative("common", common);
		return new Estimate(sectorArea(), Uncertainty.combined(contributions));
	}

	/** As {@link #sectorArea(List, double)}, of the spread in feet. */
	public Estimate areaPreservingSpread(List<Double> uncertainties, double common) {
		Estimate area = sectorArea(uncertainties, common);
		double spread = areaPreservingSpread();
		return new Estimate(spread, 2 * area.standardUncertainty() / (Math.PI * Figures.positive("radii", spread)));
	}

	private double sine(int i) {
		return Math.sin(Math.toRadians(Bearings.gapAfter(this.bearings, i)));
	}

	private double uncertainty(List<Double> uncertainties, int i) {
		if (uncertainties.size() != this.radii.size()) {
			throw new InvalidReadingException("uncertainties", Flaw.WRONG_COUNT,
					"must be one for each of " + this.radii.size() + " radii but was " + uncertainties.size());
		}
		return Figures.notNegative("uncertainties/" + i, uncertainties.get(i));
	}

	/** Of an ellipse with these two axes. */
	public static double ellipseArea(double firstAxis, double secondAxis) {
		return Math.PI / 4 * Figures.positive("firstAxis", firstAxis) * Figures.positive("secondAxis", secondAxis);
	}

	/** A radius taped along a slope, laid level. */
	public static double levelRadius(double taped, double slopeDegrees) {
		double slope = Figures.within("slopeDegrees", Math.abs(slopeDegrees), 0, Math.nextDown(90.0),
				"less than 90 either way");
		return Figures.positive("taped", taped) * Math.cos(Math.toRadians(slope));
	}

	/** A radius taped from the bark, counted from the centre of the stem. */
	public static double radiusFromBark(double tapedFeet, double girthInches) {
		return Figures.notNegative("tapedFeet", tapedFeet) + RoundStem.radiusFeet(girthInches);
	}

}
