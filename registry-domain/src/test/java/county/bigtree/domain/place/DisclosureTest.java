package county.bigtree.domain.place;

import java.util.Arrays;
import java.util.Random;

import county.bigtree.domain.quantity.InvalidReadingException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class DisclosureTest {

	/** Length of a degree of latitude, about: a quarter of 40,008 km over 90 degrees. */
	private static final double METRES_PER_DEGREE = 111_133;

	@Test
	void showsAllOrNothingOrTheNeighbourhood() {
		Position exact = new Position(40.1234, -86.2345, 8);
		assertThat(Disclosure.EXACT.shown(exact)).contains(exact);
		assertThat(Disclosure.COUNTY.shown(exact)).isEmpty();
		Position nearby = Disclosure.NEARBY.shown(exact).orElseThrow();
		assertThat(nearby.latitude()).isCloseTo(40.125, within(1e-9));
		assertThat(nearby.accuracyMetres()).isEqualTo(800);
	}

	/**
	 * Every fix of one tree within the cell must give one answer, or averages would tell.
	 */
	@Test
	void repeatedFixesOfOneTreeDoNotNarrowItDown() {
		Random random = new Random(5);
		Position first = nearby(40.1250, -86.2350);
		for (int i = 0; i < 1000; i++) {
			double scatter = 0.002 * (random.nextDouble() - 0.5);
			assertThat(nearby(40.1250 + scatter, first.longitude() + scatter)).isEqualTo(first);
		}
	}

	@Test
	void whatIsShownIsShownAsItself() {
		Random random = new Random(7);
		for (int i = 0; i < 5000; i++) {
			Position shown = nearby(180 * random.nextDouble() - 90, 360 * random.nextDouble() - 180);
			assertThat(Disclosure.NEARBY.shown(shown)).contains(shown);
		}
	}

	@Test
	void cellsAreAboutAKilometreEverywhere() {
		Random random = new Random(11);
		double farthestEastInTheNorth = 0;
		for (int i = 0; i < 5000; i++) {
			double latitude = 160 * random.nextDouble() - 80;
			double longitude = 358 * random.nextDouble() - 179;
			Position shown = nearby(latitude, longitude);
			double north = (shown.latitude() - latitude) * METRES_PER_DEGREE;
			double east = (shown.longitude() - longitude) * METRES_PER_DEGREE * Math.cos(Math.toRadians(latitude));
			assertThat(Math.abs(north)).isLessThan(557);
			assertThat(Math.abs(east)).isLessThan(560);
			if (latitude > 60) {
				farthestEastInTheNorth = Math.max(farthestEastInTheNorth, Math.abs(east));
			}
		}
		assertThat(farthestEastInTheNorth).isGreaterThan(500);
	}

	@ParameterizedTest
	@CsvSource({ "90, 180", "-90, -180", "90, -180", "0, 0", "89.999, 12", "-0.0001, 179.9999" })
	void theEdgesOfTheEarthAreInCells(double latitude, double longitude) {
		Position shown = nearby(latitude, longitude);
		assertThat(Math.abs(shown.latitude() - latitude)).isLessThan(0.00501);
		assertThat(Disclosure.NEARBY.shown(shown)).contains(shown);
	}

	@Test
	void aVaguePositionIsNotShownAsSurer() {
		assertThat(Disclosure.NEARBY.shown(new Position(40, -86, 20_000)).orElseThrow().accuracyMetres())
			.isEqualTo(20_000);
	}

	@Test
	void theLessOfTwoGoverns() {
		assertThat(Disclosure.EXACT.orLess(Disclosure.NEARBY)).isEqualTo(Disclosure.NEARBY);
		assertThat(Disclosure.COUNTY.orLess(Disclosure.EXACT)).isEqualTo(Disclosure.COUNTY);
		assertThat(Disclosure.EXACT.orLess(Disclosure.EXACT)).isEqualTo(Disclosure.EXACT);
		assertThat(Arrays.stream(Disclosure.values()).map(Disclosure::code).map(Disclosure::find))
			.allMatch((found) -> found.isPresent());
	}

	@ParameterizedTest
	@CsvSource({ "90.1, 0, 5, latitude", "NaN, 0, 5, latitude", "0, -180.1, 5, longitude", "0, 0, 0, accuracyMetres",
			"0, 0, 100001, accuracyMetres", "0, 0, NaN, accuracyMetres" })
	void refusesWhatIsNoPosition(double latitude, double longitude, double accuracy, String path) {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> new Position(latitude, longitude, accuracy))
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo(path));
	}

	private static Position nearby(double latitude, double longitude) {
		return Disclosure.NEARBY.shown(new Position(latitude, longitude, 8)).orElseThrow();
	}

}
