package county.bigtree.domain.points;

import java.util.Random;

import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class StudentDistributionTest {

	/** JCGM 100:2008, table G.2; the end gauge of H.1 takes 2.92 for 16 at 99 %. */
	@ParameterizedTest
	@CsvSource({ "0.95, 1, 12.71", "0.95, 2, 4.30", "0.95, 3, 3.18", "0.95, 10, 2.23", "0.95, 50, 2.01",
			"0.99, 2, 9.92", "0.99, 16.7646, 2.92", "0.9, 7, 1.89", "0.95, Infinity, 1.960" })
	void hasTheFactorsOfTheTable(double confidence, double degreesOfFreedom, double factor) {
		assertThat(StudentDistribution.coverageFactor(confidence, degreesOfFreedom)).isCloseTo(factor, within(0.005));
	}

	/** JCGM 100:2008, H.1: u = 32 nm with 16 degrees of freedom is 93 nm at 99 %. */
	@Test
	void expandsTheEndGauge() {
		assertThat(StudentDistribution.coverageFactor(0.99, 16.7646) * 32).isCloseTo(93, within(0.6));
	}

	/** Of 20,000 sets of three readings 95 % must reach the truth; seeded. */
	@Test
	void coversTheTruthOfFewRepeats() {
		Random random = new Random(3);
		int sets = 20_000;
		int covered = 0;
		for (int i = 0; i < sets; i++) {
			Length repeats = Length.repeats(reading(random), reading(random), reading(random));
			Estimate mean = repeats.estimate(LengthUnit.IN, (inches) -> 0);
			double reach = mean.standardUncertainty()
					* StudentDistribution.coverageFactor(0.95, mean.degreesOfFreedom());
			covered += (Math.abs(mean.value() - 150) <= reach) ? 1 : 0;
		}
		assertThat(covered / (double) sets).isCloseTo(0.95, within(0.006));
	}

	private static Length reading(Random random) {
		return Length.of(150 + 0.25 * random.nextGaussian(), LengthUnit.IN, 0);
	}

	@Test
	void refusesWhatHasNoFactor() {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> StudentDistribution.coverageFactor(0.95, 0.5));
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> StudentDistribution.coverageFactor(1, 5));
	}

}
