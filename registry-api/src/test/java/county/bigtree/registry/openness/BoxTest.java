package county.bigtree.registry.openness;

import county.bigtree.domain.place.Position;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * Boxes by RFC 7946, 5.2, whose example is Fiji: 20 degrees south to 16, 177 east to 178
 * west.
 */
class BoxTest {

	private static final Box FIJI = Box.parse("177.0,-20.0,-178.0,-16.0");

	@Test
	void spansTheDateLineWhereItsWestLiesEastOfItsEast() {
		assertThat(FIJI.holds(at(-18, 179.9))).isTrue();
		assertThat(FIJI.holds(at(-18, -179.9))).isTrue();
		assertThat(FIJI.holds(at(-18, 180))).isTrue();
		assertThat(FIJI.holds(at(-18, -180))).isTrue();
		assertThat(FIJI.holds(at(-18, 176.9))).isFalse();
		assertThat(FIJI.holds(at(-18, -177.9))).isFalse();
		assertThat(FIJI.holds(at(-15.9, 179))).isFalse();
		assertThat(FIJI.holds(at(-20.1, 179))).isFalse();
	}

	@Test
	void includesItsEdges() {
		Box box = new Box(1, 2, 3, 4);
		assertThat(box.holds(at(2, 1))).isTrue();
		assertThat(box.holds(at(4, 3))).isTrue();
		assertThat(box.holds(at(4.0001, 3))).isFalse();
		assertThat(box.holds(at(4, 3.0001))).isFalse();
	}

	@Test
	void passesOverHeights() {
		assertThat(Box.parse("1,2,-50,3,4,900")).isEqualTo(new Box(1, 2, 3, 4));
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "1,2,3", "1,2,3,4,5", "1,2,3,4,5,6,7", "a,2,3,4", "1,2,3,NaN", "1,2,3,Infinity",
			"1,5,3,4", "-180.1,2,3,4", "1,2,180.1,4", "1,-90.1,3,4", "1,2,3,90.1", "1,2,3,4," })
	void refusesWhatIsNone(String text) {
		assertThatThrownBy(() -> Box.parse(text)).isInstanceOf(IllegalArgumentException.class);
	}

	private static Position at(double latitude, double longitude) {
		return new Position(latitude, longitude, 5);
	}

}
