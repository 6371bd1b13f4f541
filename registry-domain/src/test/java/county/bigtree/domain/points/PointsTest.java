package county.bigtree.domain.points;

import java.math.BigDecimal;

import county.bigtree.domain.quantity.InvalidReadingException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class PointsTest {

	/** Common practice, no source; the sums were done by hand. */
	@ParameterizedTest
	@CsvSource({ "187.5, 91.4, 67.3, 295.73, 296", "100, 80, 62, 195.50, 196", "240, 120, 100, 385.00, 385",
			"96.25, 104.5, 40, 210.75, 211", "150, 88, 63.5, 253.88, 254", "100, 75, 39, 184.75, 185",
			"0.001, 0.001, 0.012, 0.01, 0", "100, 80, 61.96, 195.49, 195" })
	void addGirthHeightAndAQuarterOfTheSpread(double girth, double height, double spread, BigDecimal exact,
			int rounded) {
		Points points = Points.of(girth, height, spread);
		assertThat(points.toBigDecimal()).isEqualTo(exact);
		assertThat(points.rounded()).isEqualTo(rounded);
	}

	@Test
	void areRoundedOnceSoThatAHairBelowHalfStaysBelow() {
		assertThat(Points.of(100.0049, 50, 40).hundredths()).isEqualTo(16000);
		assertThat(Points.of(100.005, 50, 40).hundredths()).isEqualTo(16001);
	}

	@Test
	void forgetTheNoiseOfBinaryFractions() {
		double spread = 3 * 0.1;
		assertThat(Points.unrounded(1, 1, spread)).isEqualByComparingTo("2.075");
		assertThat(Points.of(1, 1, spread).hundredths()).isEqualTo(208);
	}

	@ParameterizedTest
	@CsvSource({ "0, 80, 62, girthInches", "100, -1, 62, heightFeet", "100, 80, NaN, crownSpreadFeet",
			"Infinity, 80, 62, girthInches" })
	void refuseAFigureThatIsMissingOrImpossible(double girth, double height, double spread, String field) {
		assertThatThrownBy(() -> Points.of(girth, height, spread)).isInstanceOf(InvalidReadingException.class)
			.hasMessageStartingWith(field);
	}

	@Test
	void refuseZero() {
		assertThatThrownBy(() -> Points.ofHundredths(0)).hasMessageContaining("points: must be greater than 0");
	}

	@Test
	void compareByTheirHundredths() {
		assertThat(Points.ofHundredths(20001)).isGreaterThan(Points.ofHundredths(20000))
			.isEqualByComparingTo(Points.ofHundredths(20001));
	}

}
