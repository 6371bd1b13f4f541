package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.InvalidReadingException;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

/**
 * Special situations of the Forest Inventory and Analysis core field guide, 5.9.2 (from
 * memory), and the midway rule of Luoma and others 2017, Forests 8(2):38. The girth of a
 * stem 48 in across is 48 π = 150.8 in; at 30 percent midway lies 0.6 ft lower.
 */
class WhereToMeasureTest {

	@ParameterizedTest
	@CsvSource({ "UPHILL, 30, , , 4.5", "MIDSLOPE, 30, , , 3.9", "MIDSLOPE, 0, , , 4.5", "UPHILL, 0, 3, , 6.5",
			"UPHILL, 0, 0.8, , 4.5", "UPHILL, 0, 5, , 4.5", "UPHILL, 0, , 5, 6.5", "UPHILL, 0, , 2, 4.5",
			"UPHILL, 0, 2, 5, 6.5", "MIDSLOPE, 30, 5, , 3.9", "MIDSLOPE, 30, 3, , 6.5", "MIDSLOPE, 300, , , 4.5" })
	void putsForkSwellAndSlopeTogether(SlopeRule rule, double slope, @Nullable Double union, @Nullable Double swell,
			double feet) {
		WhereToMeasure where = WhereToMeasure.of(rule, 48 * Math.PI, slope, union, swell);
		assertThat(where.feetAboveUphillGround()).isCloseTo(feet, within(1e-9));
		assertThat(where.reasons()).isNotEmpty();
	}

	@Test
	void saysWhy() {
		assertThat(WhereToMeasure.of(SlopeRule.MIDSLOPE, 48 * Math.PI, 30, 5.0, null).reasons()).containsExactly(
				"The stem forks at 4.5 ft or above: it is one stem, measured at 4.5 ft, or just below where the fork swells it.",
				"The girth is taken 4.5 ft above the ground midway between uphill and downhill side, which is 3.9 ft above the uphill ground.");
	}

	@Test
	void refusesWhatNoTreeHas() {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> WhereToMeasure.of(SlopeRule.UPHILL, 0, 0, null, null))
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo("girthInches"));
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> WhereToMeasure.of(SlopeRule.UPHILL, 100, -1, null, null));
	}

}
