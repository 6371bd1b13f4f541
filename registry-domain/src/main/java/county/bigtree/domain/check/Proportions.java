package county.bigtree.domain.check;

import java.util.OptionalDouble;

import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * How far height and spread lie from what the girth tells, for the species and the
 * county, in standard deviations of the logarithms (Mahalanobis' distance where both are
 * there). Small stems scatter more.
 *
 * @param height in standard deviations, NaN if there is none
 * @param spread in standard deviations, NaN if there is none
 * @param expectedHeightFeet for this girth
 * @param expectedSpreadFeet for this girth
 */
record Proportions(double height, double spread, double expectedHeightFeet, double expectedSpreadFeet) {

	/** Between the two, trees of one girth. Tuned: 0.13 to 0.30 by kind. */
	private static final double CORRELATION = 0.22;

	/** By how much more the smallest stems scatter, as a share. Tuned. */
	private static final double SMALL_MORE = 0.45;

	/** In inches of girth, over which that fades. Tuned. */
	private static final double SMALL_TO = 12;

	static Proportions of(TreeName name, double girthInches, @Nullable Estimate heightFeet,
			@Nullable Estimate spreadFeet, CountyForm county) {
		return of(county.expected(name), girthInches, heightFeet, spreadFeet);
	}

	static Proportions of(CountyForm.Expected expected, double girthInches, @Nullable Estimate heightFeet,
			@Nullable Estimate spreadFeet) {
		double height = expected.form().height().logarithm(girthInches) + expected.height().mean();
		double spread = expected.form().spread().logarithm(girthInches) + expected.spread().mean();
		double more = 1 + SMALL_MORE * Math.exp(-girthInches / SMALL_TO);
		return new Proportions(deviations(heightFeet, height, more * expected.height().deviation()),
				deviations(spreadFeet, spread, more * expected.spread().deviation()), Math.exp(height),
				Math.exp(spread));
	}

	private static double deviations(@Nullable Estimate feet, double expected, double deviation) {
		return (feet != null) ? (Math.log(feet.value()) - expected) / deviation : Double.NaN;
	}

	/** Empty where there is nothing to compare. */
	OptionalDouble squared() {
		double h = this.height;
		double w = this.spread;
		if (both()) {
			return OptionalDouble.of((h * h - 2 * CORRELATION * h * w + w * w) / (1 - CORRELATION * CORRELATION));
		}
		if (Double.isNaN(h) && Double.isNaN(w)) {
			return OptionalDouble.empty();
		}
		return OptionalDouble.of(Double.isNaN(h) ? w * w : h * h);
	}

	boolean both() {
		return !Double.isNaN(this.height) && !Double.isNaN(this.spread);
	}

	/** Beyond what is odd there, for the squared distance of one or of two figures. */
	double oddFrom(CountyForm county) {
		double share = both() ? 1 : Thresholds.ONE_PROPORTION / Thresholds.PROPORTIONS;
		return share * county.oddFrom();
	}

}
