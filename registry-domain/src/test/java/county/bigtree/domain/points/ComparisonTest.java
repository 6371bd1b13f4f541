package county.bigtree.domain.points;

import java.util.Random;

import county.bigtree.domain.points.Comparison.Clarity;
import county.bigtree.domain.quantity.Estimate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class ComparisonTest {

	/**
	 * Normal probabilities to twelve digits, as Abramowitz and Stegun, Handbook of
	 * Mathematical Functions, table 26.1, prints them (recomputed with the error function
	 * of the C library).
	 */
	@ParameterizedTest
	@CsvSource({ "0, 0.5", "0.25, 0.598706325682923", "0.5, 0.691462461274013", "1, 0.841344746068543",
			"1.96, 0.975002104851780", "5, 0.999999713348428", "-1, 0.158655253931457", "-3, 0.001349898031630",
			"-6, 0.000000000986588", "40, 1", "-40, 0" })
	void knowsTheNormalDistribution(double z, double probability) {
		assertThat(NormalDistribution.probabilityUpTo(z)).isCloseTo(probability, within(1e-12));
	}

	@ParameterizedTest
	@CsvSource({ "30000, 29400, 2, 2, 6.00, 2.8284, 0.9831, CLEAR",
			"30000, 29900, 2, 2, 1.00, 2.8284, 0.6382, TOO_CLOSE", "30000, 29000, 1.5, 5, 10.00, 5.2202, 0.9723, CLEAR",
			"29573, 29100, 2.1542, 2.5, 4.73, 3.3001, 0.9241, LIKELY",
			"29400, 30000, 2, 2, -6.00, 2.8284, 0.0169, CLEAR", "30000, 30000, 2, 2, 0.00, 2.8284, 0.5, TOO_CLOSE",
			"30000, 29999, 0, 0, 0.01, 0, 1, CLEAR", "29999, 30000, 0, 0, -0.01, 0, 0, CLEAR",
			"30000, 30000, 0, 0, 0.00, 0, 0.5, TOO_CLOSE" })
	void saysHowSurelyTheFirstIsAhead(int first, int second, double u1, double u2, String margin, double u,
			double probability, Clarity clarity) {
		Comparison comparison = Comparison.of(new Score(Points.ofHundredths(first), u1),
				new Score(Points.ofHundredths(second), u2));
		assertThat(comparison.margin()).isEqualTo(margin);
		assertThat(comparison.standardUncertainty()).isCloseTo(u, within(1e-4));
		assertThat(comparison.probability()).isCloseTo(probability, within(1e-4));
		assertThat(comparison.clarity()).isEqualTo(clarity);
	}

	/**
	 * Scores that err together compare more surely: 6 points, 2 each, r = 0.5 give 3 and
	 * 0.9987, by hand.
	 */
	@Test
	void scoresThatErrTogetherCompareMoreSurely() {
		Score leader = new Score(Points.ofHundredths(30_600), 2);
		Score other = new Score(Points.ofHundredths(30_000), 2);
		Comparison together = Comparison.of(leader, other, 0.5);
		assertThat(together.standardUncertainty()).isCloseTo(2, within(1e-9));
		assertThat(together.probability()).isCloseTo(0.9987, within(1e-4));
		assertThat(Comparison.of(leader, other, 0)).isEqualTo(Comparison.of(leader, other));
		assertThat(Comparison.of(leader, other, 1).standardUncertainty()).isZero();
	}

	/** One baseline of 100 ± 1 ft serves height and crown; by simulation, seeded. */
	@Test
	void figuresThatShareAReadingErrTogether() {
		Random random = new Random(5);
		double squares = 0;
		int draws = 100_000;
		for (int i = 0; i < draws; i++) {
			double shared = random.nextGaussian();
			double off = random.nextGaussian() * 0.5 + (0.8 * shared + 0.6 * random.nextGaussian()) * 2
					+ (0.5 * shared + Math.sqrt(0.75) * random.nextGaussian()) * 4 / 4;
			squares += off * off;
		}
		Score score = Score.of(new Estimate(150, 0.5), new Estimate(90, 2), new Estimate(60, 4),
				new Correlations(0, 0, 0.8 * 0.5));
		assertThat(score.standardUncertainty()).isCloseTo(Math.sqrt(squares / draws), within(0.02));
		assertThat(Score.of(new Estimate(150, 0.5), new Estimate(90, 2), new Estimate(60, 4), Correlations.NONE))
			.isEqualTo(Score.of(new Estimate(150, 0.5), new Estimate(90, 2), new Estimate(60, 4)));
	}

	@Test
	void takesTheUncertaintyOfAScoreFromItsThreeFigures() {
		Score score = Score.of(new Estimate(187.5, 0.5), new Estimate(91.4, 2), new Estimate(67.3, 2.5));
		assertThat(score.points().hundredths()).isEqualTo(29573);
		assertThat(score.standardUncertainty()).isCloseTo(2.154211, within(1e-6));
	}

	@Test
	void refusesANegativeUncertainty() {
		assertThatThrownBy(() -> new Score(Points.ofHundredths(1), -0.1)).hasMessageContaining("standardUncertainty");
	}

}
