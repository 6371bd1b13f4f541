package county.bigtree.registry.pages;

import java.time.ZoneOffset;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Figures as people read them. A foot is 0.3048 m and a mile 5280 ft, by definition (NIST
 * Handbook 44, appendix C).
 */
class WordsTest {

	@ParameterizedTest
	@CsvSource({ "8, FEET, 26 ft", "20, FEET, 66 ft", "300, FEET, 980 ft", "800, FEET, 0.5 mi", "20000, FEET, 12.4 mi",
			"8, METRIC, 8 m", "800, METRIC, 800 m", "20000, METRIC, 20.0 km" })
	void saysADistanceInTheReadersUnits(double metres, Units units, String said) {
		assertThat(new Words(ZoneOffset.UTC, units).distance(metres)).isEqualTo(said);
	}

	@Test
	void setsThousandsApart() {
		assertThat(new Words(ZoneOffset.UTC, Units.FEET).count(4977)).isEqualTo("4,977");
		assertThat(new Words(ZoneOffset.UTC, Units.FEET).count(54)).isEqualTo("54");
	}

}
