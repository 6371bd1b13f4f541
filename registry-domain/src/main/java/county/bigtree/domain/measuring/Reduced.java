package county.bigtree.domain.measuring;

import java.util.Arrays;
import java.util.Optional;

import county.bigtree.domain.points.Correlations;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * What the readings of one visit come to, and by which state of the formulas. A figure
 * not measured is null.
 *
 * @param version of the formulas and defaults used, from 1
 * @param correlations of the three, where they share a reading
 */
public record Reduced(int version, @Nullable Estimate girthInches, @Nullable Estimate heightFeet,
		@Nullable Estimate crownSpreadFeet, Correlations correlations) {

	/**
	 * Of the formulas and instrument defaults in this package: raised whenever one of
	 * them gives another figure than before. What each changed is told in the page of
	 * methods.
	 */
	public static final int VERSION = 2;

	public Reduced(int version, @Nullable Estimate girthInches, @Nullable Estimate heightFeet,
			@Nullable Estimate crownSpreadFeet) {
		this(version, girthInches, heightFeet, crownSpreadFeet, Correlations.NONE);
	}

	/**
	 * Of the points' uncertainty, by the Welch-Satterthwaite formula (JCGM 100:2008,
	 * G.4.1), what the figures share left aside; infinite unless an entry was repeated,
	 * or where a figure is lacking.
	 */
	public double pointsDegreesOfFreedom() {
		if (this.girthInches == null || this.heightFeet == null || this.crownSpreadFeet == null) {
			return Double.POSITIVE_INFINITY;
		}
		double[] freedom = { this.girthInches.degreesOfFreedom(), this.heightFeet.degreesOfFreedom(),
				this.crownSpreadFeet.degreesOfFreedom() };
		double[] contributions = { this.girthInches.standardUncertainty(), this.heightFeet.standardUncertainty(),
				this.crownSpreadFeet.standardUncertainty() / 4 };
		return Arrays.stream(freedom).allMatch(Double::isInfinite) ? Double.POSITIVE_INFINITY
				: Uncertainty.effectiveDegreesOfFreedom(contributions, freedom);
	}

	/** Empty unless all three figures are there. */
	public Optional<Score> score() {
		if (this.girthInches == null || this.heightFeet == null || this.crownSpreadFeet == null) {
			return Optional.empty();
		}
		return Optional.of(Score.of(this.girthInches, this.heightFeet, this.crownSpreadFeet, this.correlations));
	}

}
