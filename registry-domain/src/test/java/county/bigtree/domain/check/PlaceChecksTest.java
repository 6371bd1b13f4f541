package county.bigtree.domain.check;

import java.util.List;

import county.bigtree.domain.place.Position;
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
				RulesOfFiling.DEFAULTS, (at, position) -> Double.NaN);
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
		Neighbour other = new Neighbour("AB-1", false, metres, Math.hypot(10, 10), null);
		assertThat(find("likely-same-tree", filed(39.5, -84.5), near(other)).isPresent()).isEqualTo(asked);
	}

	@ParameterizedTest
	@CsvSource({ "95, true", "80, false" })
	void asksOfRoughPlacesOnlyWhenTheGirthsAreAlike(double girth, boolean asked) {
		Neighbour other = new Neighbour("AB-1", false, 700, 800, girth);
		assertThat(find("likely-same-tree", filed(39.5, -84.5), near(other)).isPresent()).isEqualTo(asked);
	}

	@Test
	void namesTheNearest() {
		Finding finding = find("likely-same-tree", filed(39.5, -84.5),
				near(new Neighbour("AB-1", false, 9, 14, null), new Neighbour("AB-2", false, 3, 14, null)))
			.orElseThrow();
		assertThat(finding.figures()).containsEntry("tree", "AB-2");
	}

	@Test
	void tellsOfATreeThatIsNotShownOnlyThatItMayBeThere() {
		Neighbour hidden = new Neighbour(null, true, 3, 14, null);
		Finding finding = find("likely-same-tree", filed(39.5, -84.5), near(hidden)).orElseThrow();
		assertThat(finding.figures()).isEmpty();
		assertThat(finding.detail()).startsWith("A tree of the same species may be on the books here already")
			.doesNotContain("wait");
		Neighbour accepted = new Neighbour(null, false, 3, 14, null);
		assertThat(find("likely-same-tree", filed(39.5, -84.5), near(accepted))).contains(finding);
	}

	@Test
	void tellsWhoMayKnowThatATreeWaits() {
		Neighbour waiting = new Neighbour("AB-1", true, 3, 14, null);
		assertThat(find("likely-same-tree", filed(39.5, -84.5), near(waiting)).orElseThrow().detail()).contains("AB-1",
				"waits for a decision");
	}

}
