package county.bigtree.registry.round;

import java.util.List;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class RoundTest {

	private static final Round.Place NEAR = new Round.Place("near", 40.001, -86.0);

	private static final Round.Place FARTHER = new Round.Place("farther", 40.01, -86.0);

	private static final Round.Place FAR = new Round.Place("far", 40.1, -86.0);

	@Test
	void passesTheNearOnTheWayToTheFar() {
		Round round = Round.of(List.of(FAR, NEAR, FARTHER), new Round.Place("", 40.0, -86.0));
		assertThat(round.stops()).extracting((stop) -> stop.place().id()).containsExactly("near", "farther", "far");
	}

	@Test
	void beginsAtAnEndWhereNobodySaysFromWhere() {
		Round round = Round.of(List.of(FARTHER, NEAR, FAR), null);
		assertThat(round.stops().get(1).place()).isEqualTo(FARTHER);
		assertThat(round.stops().get(0).leg()).isZero();
	}

	@Test
	void measuresTheWayAsTheCrowFlies() {
		Round round = Round.of(List.of(FAR), new Round.Place("", 40.0, -86.0));
		// The meridian's radius of curvature on WGS 84 (a = 6378137 m, 1/f =
		// 298.257223563), integrated numerically from 40 to 40.1 degrees.
		assertThat(round.metres()).isCloseTo(11_103.559, Offset.offset(0.001));
		assertThat(round.stops().get(0).leg()).isEqualTo(round.metres());
	}

	@Test
	void goesNowhereWithoutPlaces() {
		assertThat(Round.of(List.of(), NEAR).stops()).isEmpty();
		assertThat(Round.of(List.of(), null).metres()).isZero();
	}

}
