package county.bigtree.registry.check;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What the checks on figures come to on the trees of Boise, on which they were not fitted
 * (Urban tree database, see {@link CityTrees}). The shares are those measured, less two
 * hundredths.
 */
class CheckRatesTest {

	private static CheckRates boise(boolean onTheBooks) {
		try (Reader reader = new InputStreamReader(
				Objects.requireNonNull(CheckRatesTest.class.getResourceAsStream("/urban-trees/boise.csv")),
				StandardCharsets.UTF_8)) {
			return new CheckRates(CityTrees.read(reader), onTheBooks);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	@ParameterizedTest
	@CsvSource({ "true", "false" })
	void asksAboutAtMostTwoInAHundredSoundTrees(boolean onTheBooks) {
		assertThat(boise(onTheBooks).sound().questioned()).isLessThanOrEqualTo(0.02);
	}

	@Test
	void stopsNoSoundTree() {
		assertThat(boise(true).sound().stopped()).isZero();
	}

	@ParameterizedTest
	@CsvSource({ "true, UNIT_SLIP, 0.93", "true, TRANSPOSED_DIGITS, 0.57", "true, WRONG_SPECIES, 0.18",
			"true, WRONG_AS_FREQUENT, 0.17", "true, WRONG_GENUS, 0.20", "true, WRONG_IN_CATALOGUE, 0.95",
			"true, OFF_BY_A_THIRD, 0.13", "true, HEIGHT_LESS, 0.20", "true, CROWN_LESS, 0.25", "false, UNIT_SLIP, 0.83",
			"false, TRANSPOSED_DIGITS, 0.46", "false, WRONG_SPECIES, 0.02", "false, OFF_BY_A_THIRD, 0.04" })
	void asksAboutSpoiltTrees(boolean onTheBooks, SeededFault fault, double share) {
		assertThat(boise(onTheBooks).with(fault).questioned()).isGreaterThanOrEqualTo(share);
	}

}
