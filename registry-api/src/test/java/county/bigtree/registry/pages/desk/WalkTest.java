package county.bigtree.registry.pages.desk;

import java.util.List;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class WalkTest {

	private static final Walk.Place NEAR = new Walk.Place("near", "LM-1", 40.001, -86.0);

	private static final Walk.Place FARTHER = new Walk.Place("farther", "LM-2", 40.01, -86.0);

	private static final Walk.Place FAR = new Walk.Place("far", "LM-3", 40.1, -86.0);

	@Test
	void goesOnToTheNearestThatIsLeft() {
		Walk walk = Walk.of(List.of(FAR, NEAR, FARTHER), new Walk.Place("", "", 40.0, -86.0));
		assertThat(walk.stops()).extracting((stop) -> stop.place().visit()).containsExactly("near", "farther", "far");
	}

	@Test
	void beginsWithTheFirstWhereNobodySaysFromWhere() {
		Walk walk = Walk.of(List.of(FAR, NEAR, FARTHER), null);
		assertThat(walk.stops()).extracting((stop) -> stop.place().visit()).containsExactly("far", "farther", "near");
		assertThat(walk.stops().get(0).leg()).isZero();
	}

	@Test
	void measuresTheWayAsTheCrowFlies() {
		Walk walk = Walk.of(List.of(FAR), new Walk.Place("", "", 40.0, -86.0));
		// The meridian's radius of curvature on WGS 84 (a = 6378137 m, 1/f =
		// 298.257223563), integrated numerically from 40 to 40.1 degrees.
		assertThat(walk.metres()).isCloseTo(11_103.559, Offset.offset(0.001));
	}

	@Test
	void walksNowhereWithoutPlaces() {
		assertThat(Walk.of(List.of(), NEAR).stops()).isEmpty();
	}

}
