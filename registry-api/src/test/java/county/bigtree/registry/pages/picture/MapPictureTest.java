package county.bigtree.registry.pages.picture;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

import county.bigtree.registry.pages.picture.MapPicture.Placed;
import county.bigtree.registry.pages.picture.MapPicture.Point;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * Where things lie on the maps, worked out by hand.
 */
class MapPictureTest {

	// half a degree either way at 60 degrees north, where a degree of longitude is half
	// as long as one of latitude
	private static final List<List<Point>> SQUARE = List.of(List.of(new Point(-0.5, 59.75), new Point(0.5, 59.75),
			new Point(0.5, 60.25), new Point(-0.5, 60.25), new Point(-0.5, 59.75)));

	@Test
	void squeezesLongitudesByTheCosineOfTheLatitude() {
		MapPicture map = draw(SQUARE, List.of());
		assertThat(map.boundary()).isEqualTo("M14 466L466 466L466 14L14 14L14 466Z");
		assertThat(map.height()).isEqualTo(480 + 30);
	}

	@Test
	void putsTheMiddleInTheMiddle() {
		MapPicture.Mark mark = draw(SQUARE, List.of(placed("A", 0, 60, 0))).marks().get(0);
		assertThat(mark.x()).isEqualTo(240);
		assertThat(mark.y()).isEqualTo(240);
		assertThat(mark.radius()).isZero();
	}

	@Test
	void drawsAreasAsWideAsTheyAre() {
		// half a degree of latitude, 55.66 km, is 452 wide: 800 m are 6.5
		MapPicture.Mark mark = draw(SQUARE, List.of(placed("A", 0, 60, 800))).marks().get(0);
		assertThat(mark.radius()).isCloseTo(6.5, within(0.05));
	}

	@Test
	void treesAtOnePlaceShareAMark() {
		MapPicture map = draw(SQUARE,
				List.of(placed("A", 0, 60, 800), placed("B", 0.1, 60, 0), placed("C", 0, 60, 800)));
		assertThat(map.marks()).extracting(MapPicture.Mark::count).containsExactly(2, 1);
		assertThat(map.marks().get(0).place()).isEqualTo("60.00000,0.00000");
	}

	@Test
	void scaleIsOfRoundKilometres() {
		// 452 for 55.66 km: a quarter of 480 is 14.8 km
		MapPicture.Scale scale = draw(SQUARE, List.of()).scale();
		assertThat(scale.distance()).isEqualTo("10 km");
		assertThat(scale.width()).isCloseTo(81.2, within(0.1));
	}

	@Test
	void scaleIsOfRoundMilesForWhoReadsFeet() {
		// 34.58 miles of 1609.344 m: a quarter of 480 is 9.2 miles
		MapPicture map = Objects.requireNonNull(MapPicture.of(SQUARE, List.of(), List.of(), false));
		assertThat(map.scale().distance()).isEqualTo("5 mi");
		assertThat(map.scale().width()).isCloseTo(65.3, within(0.1));
	}

	@Test
	void thereIsNoMapOfNothing() {
		assertThat(MapPicture.of(List.of(), List.of(), List.of(), true)).isNull();
	}

	@Test
	void oneTreeWithoutABoundaryIsStillAMap() {
		MapPicture map = draw(List.of(), List.of(placed("A", -87, 40, 800)));
		assertThat(map.boundary()).isEmpty();
		assertThat(map.marks().get(0).x()).isCloseTo(240, within(0.1));
	}

	@Test
	void twoThousandDotsAndAFineOutlineStayLight() {
		List<Point> coast = IntStream.range(0, 20_000)
			.mapToObj(
					(i) -> new Point(0.5 * Math.cos(i * Math.PI / 10_000), 60 + 0.25 * Math.sin(i * Math.PI / 10_000)))
			.toList();
		List<Point> others = IntStream.range(0, 2000)
			.mapToObj((i) -> new Point(-0.4 + (i % 50) * 0.016, 59.8 + i / 50 * 0.01))
			.toList();
		MapPicture map = Objects.requireNonNull(MapPicture.of(List.of(coast), List.of(), others, true));
		assertThat(map.others().length()).isLessThan(35_000);
		assertThat(map.boundary().length()).isLessThan(25_000);
	}

	private static MapPicture draw(List<List<Point>> outline, List<Placed> trees) {
		return Objects.requireNonNull(MapPicture.of(outline, trees, List.of(), true));
	}

	private static Placed placed(String tag, double longitude, double latitude, double within) {
		return new Placed(tag, "oak", new Point(longitude, latitude), within);
	}

}
