package county.bigtree.domain.rulebook;

import java.math.BigDecimal;
import java.math.MathContext;

import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;

/**
 * When a tree behind the leader shares its title. Inclusive, judged on stored hundredths
 * of a point and against the leader only, never chained.
 */
public sealed interface TieRule {

	/**
	 * Whether the other score shares the title of the leading one.
	 * @param leader the score with the most points
	 * @param other a score with as many points or fewer
	 */
	boolean shares(Score leader, Score other);

	/**
	 * The fewest points with which a tree could share a title led with these points. A
	 * tree below it never does; one at or above it may.
	 */
	Points floor(Points leader);

	private static BigDecimal behind(Score leader, Score other) {
		return leader.points().toBigDecimal().subtract(other.points().toBigDecimal());
	}

	private static Points pointsAtLeast(BigDecimal points) {
		int hundredths = points.movePointRight(2).setScale(0, java.math.RoundingMode.CEILING).intValueExact();
		return Points.ofHundredths(Math.max(1, hundredths));
	}

	private static void requireNotNegative(String name, BigDecimal value) {
		if (value.signum() < 0) {
			throw new IllegalArgumentException(name + " must be 0 or more, was " + value);
		}
	}

	/**
	 * Within so many points of the leader.
	 *
	 * @param n points, 0 or more
	 */
	record WithinPoints(BigDecimal n) implements TieRule {

		public WithinPoints {
			requireNotNegative("n", n);
		}

		@Override
		public boolean shares(Score leader, Score other) {
			return behind(leader, other).compareTo(this.n) <= 0;
		}

		@Override
		public Points floor(Points leader) {
			return pointsAtLeast(leader.toBigDecimal().subtract(this.n));
		}

	}

	/**
	 * Within so many percent of the leader's points.
	 *
	 * @param n percent, 0 to 100
	 */
	record WithinPercent(BigDecimal n) implements TieRule {

		public WithinPercent {
			requireNotNegative("n", n);
			if (n.compareTo(new BigDecimal(100)) > 0) {
				throw new IllegalArgumentException("n must be at most 100 percent, was " + n);
			}
		}

		@Override
		public boolean shares(Score leader, Score other) {
			return behind(leader, other).compareTo(margin(leader.points())) <= 0;
		}

		@Override
		public Points floor(Points leader) {
			return pointsAtLeast(leader.toBigDecimal().subtract(margin(leader)));
		}

		private BigDecimal margin(Points leader) {
			return leader.toBigDecimal().multiply(this.n).movePointLeft(2);
		}

	}

	/**
	 * Within k times the combined standard uncertainty of the difference, and never more
	 * than a number of points apart, so that a sloppy reading can't claim a share.
	 *
	 * @param k coverage factor, 0 or more
	 * @param atMost points, 0 or more
	 */
	record WithinUncertainty(BigDecimal k, BigDecimal atMost) implements TieRule {

		public WithinUncertainty {
			requireNotNegative("k", k);
			requireNotNegative("atMost", atMost);
		}

		@Override
		public boolean shares(Score leader, Score other) {
			BigDecimal behind = behind(leader, other);
			BigDecimal combined = new BigDecimal(Math.hypot(leader.standardUncertainty(), other.standardUncertainty()),
					MathContext.DECIMAL64);
			return behind.compareTo(this.atMost) <= 0 && behind.compareTo(this.k.multiply(combined)) <= 0;
		}

		@Override
		public Points floor(Points leader) {
			return pointsAtLeast(leader.toBigDecimal().subtract(this.atMost));
		}

	}

}
