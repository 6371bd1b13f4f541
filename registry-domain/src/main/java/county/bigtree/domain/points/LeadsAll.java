package county.bigtree.domain.points;

import java.util.List;

/**
 * The probability that one tree is truly larger than every one of several others, beside
 * the probability for each alone. The scores are taken as normal and independent of each
 * other; the one leader takes part in all the comparisons, so that the product of the
 * single probabilities would be too small:
 *
 * <pre>
 * P = ∫ φ(t) ∏ Φ((A + u(A) t - B) / u(B)) dt
 * </pre>
 *
 * integrated by Simpson's rule. No table of it exists; the tests hold it against
 * simulation and against the exact cases.
 *
 * @param probability from 0 to 1, never above the least of the single ones
 * @param closest that least, or 1 where there are no others
 */
public record LeadsAll(double probability, double closest) {

	private static final double REACH = 8;

	private static final int STEPS = 800;

	public static LeadsAll of(Score leader, List<Score> others) {
		double closest = 1;
		for (Score other : others) {
			closest = Math.min(closest, Comparison.of(leader, other).probability());
		}
		if (others.isEmpty()) {
			return new LeadsAll(1, 1);
		}
		// not a hair above the closest pair, whatever the integration leaves
		return new LeadsAll(Math.min(closest, integral(leader, others)), closest);
	}

	private static double integral(Score leader, List<Score> others) {
		if (leader.standardUncertainty() == 0) {
			return allBelow(leader.points().toBigDecimal().doubleValue(), others);
		}
		double step = 2 * REACH / STEPS;
		double sum = 0;
		for (int i = 0; i <= STEPS; i++) {
			double t = -REACH + i * step;
			double weight = (i == 0 || i == STEPS) ? 1 : (i % 2 == 1) ? 4 : 2;
			double truth = leader.points().toBigDecimal().doubleValue() + leader.standardUncertainty() * t;
			sum += weight * density(t) * allBelow(truth, others);
		}
		return Math.max(0, Math.min(1, sum * step / 3));
	}

	private static double allBelow(double truth, List<Score> others) {
		double product = 1;
		for (Score other : others) {
			product *= below(truth, other);
		}
		return product;
	}

	private static double below(double truth, Score other) {
		double margin = truth - other.points().toBigDecimal().doubleValue();
		if (other.standardUncertainty() > 0) {
			return NormalDistribution.probabilityUpTo(margin / other.standardUncertainty());
		}
		return (margin == 0) ? 0.5 : (margin > 0) ? 1 : 0;
	}

	private static double density(double t) {
		return Math.exp(-t * t / 2) / Math.sqrt(2 * Math.PI);
	}

}
