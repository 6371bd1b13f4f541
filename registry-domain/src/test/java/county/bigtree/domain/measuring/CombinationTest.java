package county.bigtree.domain.measuring;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class CombinationTest {

	/** Textbook least squares, worked by hand. */
	@Test
	void weighsAndWidens() {
		Combination heights = Combination.of(List.of(new Estimate(98, 2), new Estimate(101.5, 1)));
		assertThat(heights.mean().value()).isCloseTo(100.8, within(1e-9));
		assertThat(heights.chiSquared()).isCloseTo(2.45, within(1e-9));
		assertThat(heights.birgeRatio()).isCloseTo(1.5652, within(1e-4));
		assertThat(heights.mean().standardUncertainty()).isCloseTo(1.4, within(1e-9));
		assertThat(heights.agree()).isTrue();
		assertThat(Combination.of(List.of(new Estimate(98, 0.5), new Estimate(101.5, 1))).agree()).isFalse();
		assertThat(Combination.of(List.of(new Estimate(98, 2))))
			.isEqualTo(new Combination(new Estimate(98, 2), 0, 1, true));
		assertThat(Combination.working(List.of(new Estimate(98, 2), new Estimate(101.5, 1)), "ft"))
			.extracting(WorkingLine::result)
			.containsExactly("100.8 ft", "2.45", "1.4 ft");
	}

	/** Of 4 measurements of differing worth, seeded: the mean scatters as it says. */
	@Test
	void isAsSureAsASimulationSays() {
		Random random = new Random(13);
		double[] us = { 0.5, 1, 2, 3 };
		double squares = 0;
		int draws = 40_000;
		for (int i = 0; i < draws; i++) {
			List<Estimate> drawn = IntStream.range(0, 4)
				.mapToObj((k) -> new Estimate(100 + us[k] * random.nextGaussian(), us[k]))
				.toList();
			squares += Math.pow(WeightedMean.of(drawn).value() - 100, 2);
		}
		List<Estimate> ideal = IntStream.range(0, 4).mapToObj((k) -> new Estimate(100, us[k])).toList();
		assertThat(Combination.of(ideal).mean().standardUncertainty()).isCloseTo(Math.sqrt(squares / draws),
				within(0.01));
	}

	@Test
	void refusesFiguresWithoutUncertainty() {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> Combination.of(List.of(Estimate.exact(3))));
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> Combination.of(List.of()));
	}

}
