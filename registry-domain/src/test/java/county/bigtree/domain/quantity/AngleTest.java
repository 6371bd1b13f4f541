package county.bigtree.domain.quantity;

import java.util.List;

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

	/**
	 * Three sights of 40, 41 and 42 degrees: mean 41, s / √3 = 0.5774; with 0.25 stated
	 * for each 0.6292 (JCGM 100:2008, 4.2.3, by hand).
	 */
	@Test
	void severalSightsGiveTheirMean() {
		List<Double> sights = List.of(40.0, 41.0, 42.0);
		Estimate silent = Angle.repeated(sights, AngleUnit.DEG, null).estimateRadians(0.25, 1);
		assertThat(Math.toDegrees(silent.value())).isCloseTo(41, within(1e-9));
		assertThat(Math.toDegrees(silent.standardUncertainty())).isCloseTo(0.5774, within(1e-4));
		assertThat(silent.degreesOfFreedom()).isCloseTo(2, within(1e-9));
		Estimate stated = Angle.repeated(sights, AngleUnit.DEG, 0.25).estimateRadians(0.25, 1);
		assertThat(Math.toDegrees(stated.standardUncertainty())).isCloseTo(0.6292, within(1e-4));
		Estimate alike = Angle.repeated(List.of(40.0, 40.0), AngleUnit.PCT, null).estimateRadians(0.25, 1);
		assertThat(alike).isEqualTo(Angle.percent(40).estimateRadians(0.25, 1));
		assertThat(Angle.repeated(List.of(40.0, 41.0, 41.0), AngleUnit.PCT, null).text()).isEqualTo("+40.6667 %");
	}

	@Test
	void refusesSightsThatAreNone() {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> Angle.repeated(List.of(40.0), AngleUnit.DEG, null))
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo("repeats"));
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> Angle.repeated(List.of(40.0, 90.0), AngleUnit.DEG, null))
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo("repeats/1"));
	}

}
