package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class UncertaintyTest {

	/** JCGM 100:2008, H.1, end gauge calibration: 32 nm with 16 degrees of freedom. */
	@Test
	void agreesWithThePublishedEndGauge() {
		double[] u = { 25, 9.7, 2.9, 16.6 };
		double[] degreesOfFreedom = { 18, 25.6, 50, 2 };
		assertThat(Uncertainty.combined(u)).isCloseTo(32, within(0.5));
		assertThat(Math.floor(Uncertainty.effectiveDegreesOfFreedom(u, degreesOfFreedom))).isEqualTo(16);
	}

	@Test
	void taperIsOnlyBetweenTwoGirthsThatLieClose() {
		Estimate girth = Estimate.exact(150);
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> Taper.girthAt(4.5, girth, Estimate.exact(3), girth, Estimate.exact(4.5)));
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> Taper.girthAt(4.5, girth, Estimate.exact(3), girth, Estimate.exact(5.1)))
			.withMessageContaining("2 ft");
	}

	@Test
	void aWeightedMeanNeedsUncertainties() {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> WeightedMean.of(List.of(Estimate.exact(98))));
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> WeightedMean.of(List.of()));
	}

}
