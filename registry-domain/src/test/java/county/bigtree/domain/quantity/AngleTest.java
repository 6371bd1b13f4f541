package county.bigtree.domain.quantity;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class AngleTest {

	/** A percentage is a hundred times the tangent, by definition. */
	@ParameterizedTest
	@CsvSource({ "45, 100", "30, 57.7350", "60, 173.2051", "5.7106, 10", "14.0362, 25", "51.1155, 124", "-45, -100" })
	void readsPercentAsTangent(double degrees, double percent) {
		assertThat(Angle.percent(percent).degrees()).isCloseTo(degrees, within(1e-4));
		assertThat(Angle.degrees(degrees).tangent()).isCloseTo(percent / 100, within(1e-5));
	}

	@Test
	void turnsUncertaintyIntoRadians() {
		assertThat(Angle.degrees(10).estimateRadians(0.25, 1).standardUncertainty()).isCloseTo(Math.toRadians(0.25),
				within(1e-15));
		assertThat(Angle.degrees(10, 0.5).estimateRadians(0.25, 1).standardUncertainty()).isCloseTo(Math.toRadians(0.5),
				within(1e-15));
		assertThat(Angle.percent(100, 1).estimateRadians(0.25, 3).standardUncertainty()).isCloseTo(0.005,
				within(1e-15));
		assertThat(Angle.percent(0).estimateRadians(0.25, 3).standardUncertainty()).isCloseTo(0.03, within(1e-15));
	}

	@ParameterizedTest
	@ValueSource(doubles = { 90, -90, 123, Double.NaN, Double.NEGATIVE_INFINITY })
	void refusesWhatPointsStraightUpOrBackwards(double degrees) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> Angle.degrees(degrees))
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo("value"));
	}

	@Test
	void isWrittenWithItsSign() {
		assertThat(Angle.percent(124).text()).isEqualTo("+124 %");
		assertThat(Angle.degrees(-3.5).text()).isEqualTo("-3.5 deg");
	}

	@Test
	void estimateRefusesWhatIsNoFigure() {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> new Estimate(Double.NaN, 0));
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> new Estimate(1, -1));
	}

}
