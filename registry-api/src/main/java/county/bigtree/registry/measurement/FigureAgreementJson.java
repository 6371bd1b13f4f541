package county.bigtree.registry.measurement;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

import county.bigtree.domain.measuring.Combination;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.review.CheckedFigure;
import org.jspecify.annotations.Nullable;

/**
 * How a filed figure stands to the verifier's own, as judged at the sign-off.
 *
 * @param figure girth, height or crown
 * @param unit of all its figures: in or ft
 * @param difference checked less filed
 * @param allowedGrowth between the visits, where they lie over a year apart
 * @param unexplained what growth leaves of the difference, to be judged
 * @param tolerance how much of it the county's rules allow
 * @param enScore of the unexplained difference: up to 1 either way both agree within
 * their uncertainties; null where a side has none
 * @param repeatabilityLimit that two practised measurers exceed once in twenty times;
 * null where none is published
 * @param verdict agrees, disagrees or look-again
 * @param sentence the verdict in words
 * @param reasons each test with its numbers
 * @param combined both put together, where they agree and are of one time: for
 * information, it counts for nothing
 */
public record FigureAgreementJson(String figure, String unit, BigDecimal filed, BigDecimal filedStandardUncertainty,
		BigDecimal checked, BigDecimal checkedStandardUncertainty, BigDecimal difference,
		@Nullable GrowthJson allowedGrowth, BigDecimal unexplained, BigDecimal tolerance, boolean withinTolerance,
		@Nullable BigDecimal enScore, @Nullable BigDecimal repeatabilityLimit, String verdict, String sentence,
		List<String> reasons, @Nullable CombinedJson combined) {

	public static FigureAgreementJson from(KeptFigure kept) {
		CheckedFigure judged = kept.judged();
		Double score = judged.enScore();
		Double limit = judged.repeatabilityLimit();
		return new FigureAgreementJson(kept.kind(), (judged.kind() == Kind.GIRTH) ? "in" : "ft",
				rounded(judged.filed().value()), rounded(judged.filed().standardUncertainty()),
				rounded(judged.checked().value()), rounded(judged.checked().standardUncertainty()),
				rounded(judged.difference()), GrowthJson.from(kept), rounded(judged.unexplained()),
				rounded(judged.tolerance()), judged.withinTolerance(), (score != null) ? rounded(score) : null,
				(limit != null) ? rounded(limit) : null, kept.verdict(), judged.sentence(), judged.reasons(),
				CombinedJson.from(judged.combined()));
	}

	private static BigDecimal rounded(double value) {
		return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
	}

	/**
	 * By how much a tree's checked figure may exceed the filed one, or fall short of it
	 * where it is negative.
	 */
	public record GrowthJson(BigDecimal least, BigDecimal most) {

		private static @Nullable GrowthJson from(KeptFigure kept) {
			boolean none = kept.growthLeast() == 0 && kept.growthMost() == 0;
			return none ? null : new GrowthJson(rounded(kept.growthLeast()), rounded(kept.growthMost()));
		}

	}

	/**
	 * The mean of both, weighted by their uncertainties, with its own.
	 *
	 * @param birgeRatio by how much the uncertainty was widened for their scatter
	 */
	public record CombinedJson(BigDecimal value, BigDecimal standardUncertainty, BigDecimal birgeRatio) {

		private static @Nullable CombinedJson from(@Nullable Combination combined) {
			return (combined == null) ? null : new CombinedJson(rounded(combined.mean().value()),
					rounded(combined.mean().standardUncertainty()), rounded(combined.birgeRatio()));
		}

	}

}
