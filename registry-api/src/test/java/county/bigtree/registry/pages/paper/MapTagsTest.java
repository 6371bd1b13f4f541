package county.bigtree.registry.pages.paper;

import java.util.List;

import county.bigtree.registry.pages.picture.MapPicture.Mark;
import county.bigtree.registry.pages.picture.MapPicture.Placed;
import county.bigtree.registry.pages.picture.MapPicture.Point;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Tags on a printed map.
 */
class MapTagsTest {

	/** By eye on the printed map: 6.5 high, 28 long. */
	private static final double HEIGHT = 5;

	private static final double LENGTH = 26;

	@Test
	void standsAtTheRightOfADotThatIsAlone() {
		assertThat(MapTags.of(List.of(mark(100, 50, "LM-0001")))).singleElement().satisfies((tag) -> {
			assertThat(tag.text()).isEqualTo("LM-0001");
			assertThat(tag.x()).isBetween(102.6, 106.0);
			assertThat(tag.y()).isBetween(50.0, 54.0);
		});
	}

	@Test
	void givesWayToTheDotBesideIt() {
		List<MapTags.Tag> tags = MapTags.of(List.of(mark(100, 50, "LM-0001"), mark(120, 50.5, "LM-0002")));
		assertThat(tags.get(0).x() + LENGTH).isLessThan(100);
		assertThat(tags.get(1).x()).isGreaterThan(122.6);
	}

	@Test
	void hidesNoOtherTagWhereTreesStandClose() {
		List<MapTags.Tag> tags = MapTags.of(List.of(mark(100, 50, "LM-0001"), mark(104, 53, "LM-0002"),
				mark(98, 56, "LM-0003"), mark(130, 52, "LM-0004")));
		for (MapTags.Tag one : tags) {
			assertThat(tags).filteredOn((other) -> other != one)
				.noneMatch((other) -> Math.abs(other.x() - one.x()) < LENGTH && Math.abs(other.y() - one.y()) < HEIGHT);
		}
	}

	@Test
	void saysHowManyMoreShareThePlace() {
		Placed first = new Placed("LM-0001", "white oak", new Point(0, 0), 0);
		Placed second = new Placed("LM-0002", "red oak", new Point(0, 0), 0);
		assertThat(MapTags.of(List.of(new Mark(10, 10, 0, 0, new Point(0, 0), List.of(first, second)))))
			.extracting(MapTags.Tag::text)
			.containsExactly("LM-0001 +1");
	}

	private static Mark mark(double x, double y, String tag) {
		Point at = new Point(x, y);
		return new Mark(x, y, 0, 0, at, List.of(new Placed(tag, "white oak", at, 0)));
	}

}
