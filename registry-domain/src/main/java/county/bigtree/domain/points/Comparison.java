package county.bigtree.domain.points;

import java.math.BigDecimal;

import county.bigtree.domain.quantity.Figures;

/**
 * How one score stands to another that is ranked below it.
 *
 * @param margin points of the first less points of the second, exact
 * @param standardUncertainty of the margin: both scores' combined, taken as independent
 * @param probability that the first tree is truly the larger (normal approximation)
 */
public record Comparison(BigDecimal margin, double standardUncertainty, double probability) {

	/** The comparison in a word. The code is what JSON writes. */
	public enum Clarity {

		/** The order is right with a probability of 0.95 or more. */
		CLEAR("clear", "clear"),

		/** With 0.75 or more. */
		LIKELY("likely", "likely"),

		/** With less. */
		TOO_CLOSE("too-close", "too close to call");

		private static final double CLEAR_FROM = 0.95;

		private static final double LIKELY_FROM = 0.75;

		private final String code;

		private final String words;

		Clarity(String code, String words) {
			this.code = code;
			this.words = words;
		}

		/** Of an order that is right with this probability. */
		public static Clarity of(double probability) {
			if (probability >= CLEAR_FROM) {
				return CLEAR;
			}
			return (probability >= LIKELY_FROM) ? LIKELY : TOO_CLOSE;
		}

		public String code() {
			return this.code;
		}

		public String words() {
			return this.words;
		}

	}

	/**
	 * Of two trees whose scores err together, as where one party measured both.
	 * @param correlation from -1 to 1
	 */
	public static Comparison of(Score leader, Score other, double correlation) {
		double r = Figures.within("correlation", correlation, -1, 1, "from -1 to 1");
		BigDecimal margin = leader.points().toBigDecimal().subtract(other.points().toBigDecimal());
		double first = leader.standardUncertainty();
		double second = other.standardUncertainty();
		double u = Math.sqrt(Math.max(0, first * first + second * second - 2 * r * first * second));
		return new Comparison(margin, u, probability(margin, u));
	}

	public static Comparison of(Score leader, Score other) {
		BigDecimal margin = leader.points().toBigDecimal().subtract(other.points().toBigDecimal());
		double u = Math.hypot(leader.standardUncertainty(), other.standardUncertainty());
		return new Comparison(margin, u, probability(margin, u));
	}

	/** The margin in units of its standard uncertainty, which must be more than zero. */
	public static double standardised(double margin, double firstUncertainty, double secondUncertainty) {
		return margin / Math.hypot(firstUncertainty, secondUncertainty);
	}

	/**
	 * How clear the order of the two is, whichever is ahead: the sign of the margin says
	 * that.
	 */
	public Clarity clarity() {
		return Clarity.of(Math.max(this.probability, 1 - this.probability));
	}

	private static double probability(BigDecimal margin, double u) {
		if (margin.signum() == 0) {
			return 0.5;
		}
		if (u == 0) {
			return (margin.signum() > 0) ? 1 : 0;
		}
		return NormalDistribution.probabilityUpTo(margin.doubleValue() / u);
	}

}
