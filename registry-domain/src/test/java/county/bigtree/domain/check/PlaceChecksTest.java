package county.bigtree.domain.check;

import java.util.List;

import county.bigtree.domain.place.Position;
import county.bigtree.domain.rulebook.Rulebook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.check.FiledTrees.at;
import static county.bigtree.domain.check.FiledTrees.find;
import static org.assertj.core.api.Assertions.assertThat;

/**
 * An invented county from 39 to 40 north and 84 to 85 west.
 */
class PlaceChecksTest {

	private static boolean inCounty(Position one) {
		return one.latitude() >= 39 && one.latitude() <= 40 && one.longitude() >= -85 && one.longitude() <= -84;
	}

	private static Known near(Neighbour... neighbours) {
		return new Known(null, List.of(neighbours), PlaceChecksTest::inCounty, CountyForm.UNKNOWN, true,
				Rulebook.OLDEST_FILING_MONTHS, (at, position) -> Double.NaN);
	}

	private static Filed filed(double latitude, double longitude) {
		return at(new Position(latitude, longitude, 10), 100);
	}

	@Test
	void asksNothingInsideTheCounty() {
		assertThat(Checks.on(filed(39.5, -84.5), near())).isEmpty();
	}

	@ParameterizedTest
	@CsvSource({ "-84.5, 39.5", "39.5, 84.5", "-39.5, -84.5", "84.5, 39.5", "-39.5, 84.5" })
	void proposesThePlaceThatWasMeant(double latitude, double longitude) {
		Finding finding = find("swapped-coordinates", filed(latitude, longitude), near()).orElseThrow();
		assertThat(finding.figures()).containsEntry("proposedLatitude", "39.5")
			.containsEntry("proposedLongitude", "-84.5");
		assertThat(find("outside-county", filed(latitude, longitude), near())).isEmpty();
	}

	@Test
	void asksAboutAPlaceOutsideTheCounty() {
		assertThat(Checks.on(filed(41, -84.5), near())).extracting(Finding::code).containsExactly("outside-county");
	}

	@Test
	void asksAboutAPlaceWithoutAFix() {
		assertThat(Checks.on(filed(0, 0), near())).extracting(Finding::code).containsExactly("zero-position");
	}

	@ParameterizedTest
	@CsvSource({ "14, true", "15, false" })
	void asksWhetherATreeWithinJointAccuracyIsTheSame(double metres, boolean asked) {
		Neighbour other = new Neighbour("AB-1", metres, Math.hypot(10, 10), null);
		assertThat(find("likely-same-tree", filed(39.5, -84.5), near(other)).isPresent()).isEqualTo(asked);
	}

	@ParameterizedTest
	@CsvSource({ "95, true", "80, false" })
	void asksOfRoughPlacesOnlyWhenTheGirthsAreAlike(double girth, boolean asked) {
		Neighbour other = new Neighbour("AB-1", 700, 800, girth);
		assertThat(find("likely-same-tree", filed(39.5, -84.5), near(other)).isPresent()).isEqualTo(asked);
	}

	@Test
	void namesTheNearest() {
		Finding finding = find("likely-same-tree", filed(39.5, -84.5),
				near(new Neighbour("AB-1", 9, 14, null), new Neighbour("AB-2", 3, 14, null)))
			.orElseThrow();
		assertThat(finding.figures()).containsEntry("tree", "AB-2");
	}

}
