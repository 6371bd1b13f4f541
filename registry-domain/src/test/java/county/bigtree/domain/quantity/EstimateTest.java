package county.bigtree.domain.quantity;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

class EstimateTest {

	/** Two digits at most, after JCGM 100:2008, 7.2.6; rounded by hand. */
	@ParameterizedTest
	@CsvSource({ "295.725, 2.1542, 295.7 ± 4.3 in", "150, 0.37, 150.00 ± 0.74 in", "75, 9.9, 75 ± 20 in",
			"1234.5, 61, 1235 ± 120 in", "12.3456, 0.00123, 12.3456 ± 0.0025 in", "12.5, 0, 12.5 in",
			"99.96, 0.05, 99.96 ± 0.10 in" })
	void showsNoMoreDigitsThanItDeserves(double value, double u, String shown) {
		assertThat(new Estimate(value, u).shown("in")).isEqualTo(shown);
	}

	@Test
	void refusesWhatIsNoEstimate() {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> new Estimate(Double.NaN, 1));
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> new Estimate(1, -1));
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> new Estimate(1, 1, 0));
	}

}
