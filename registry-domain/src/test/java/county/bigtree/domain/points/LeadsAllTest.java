package county.bigtree.domain.points;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * Against exact cases and simulation; no published table.
 */
class LeadsAllTest {

	@Test
	void overOneTreeItIsTheComparisonOfTwo() {
		Score leader = score(30_000, 2);
		Score other = score(29_400, 2.5);
		assertThat(LeadsAll.of(leader, List.of(other)).probability())
			.isCloseTo(Comparison.of(leader, other).probability(), within(1e-9));
	}

	/** Of n alike each is the largest as often: 1 / n. */
	@Test
	void amongEqualsEachLeadsAsOften() {
		for (int n = 2; n <= 6; n++) {
			Score alike = score(30_000, 3);
			LeadsAll all = LeadsAll.of(alike, Collections.nCopies(n - 1, alike));
			assertThat(all.probability()).isCloseTo(1.0 / n, within(1e-9));
			assertThat(all.closest()).isEqualTo(0.5);
		}
	}

	@Test
	void agreesWithASimulation() {
		Random random = new Random(7);
		for (int round = 0; round < 8; round++) {
			Score leader = score(30_000, 0.5 + 4 * random.nextDouble());
			List<Score> others = new ArrayList<>();
			for (int i = 0; i < 4; i++) {
				others.add(score(30_000 - random.nextInt(1000), 0.5 + 4 * random.nextDouble()));
			}
			assertThat(LeadsAll.of(leader, others).probability()).isCloseTo(simulated(leader, others, random),
					within(0.012));
		}
	}

	private static double simulated(Score leader, List<Score> others, Random random) {
		int draws = 40_000;
		int led = 0;
		for (int i = 0; i < draws; i++) {
			double truth = drawn(leader, random);
			led += others.stream().allMatch((other) -> drawn(other, random) < truth) ? 1 : 0;
		}
		return led / (double) draws;
	}

	private static double drawn(Score score, Random random) {
		return score.points().hundredths() / 100.0 + score.standardUncertainty() * random.nextGaussian();
	}

	@Test
	void neverExceedsTheClosestPairNorFallsBelowWhatTheyAddUpTo() {
		Random random = new Random(11);
		for (int round = 0; round < 300; round++) {
			Score leader = score(30_000, 0.2 + 4 * random.nextDouble());
			List<Score> others = new ArrayList<>();
			for (int i = 0; i <= round % 5; i++) {
				others.add(score(29_000 + random.nextInt(1500), 0.2 + 4 * random.nextDouble()));
			}
			LeadsAll all = LeadsAll.of(leader, others);
			double missed = others.stream().mapToDouble((o) -> 1 - Comparison.of(leader, o).probability()).sum();
			assertThat(all.probability()).isLessThanOrEqualTo(all.closest()).isGreaterThanOrEqualTo(1 - missed - 1e-9);
		}
	}

	@Test
	void knowsFiguresWithoutDoubt() {
		assertThat(LeadsAll.of(score(30_000, 0), List.of(score(29_999, 0))).probability()).isEqualTo(1);
		assertThat(LeadsAll.of(score(30_000, 0), List.of(score(30_001, 0))).probability()).isZero();
		assertThat(LeadsAll.of(score(30_000, 2), List.of())).isEqualTo(new LeadsAll(1, 1));
	}

	private static Score score(int hundredths, double u) {
		return new Score(Points.ofHundredths(hundredths), u);
	}

}
