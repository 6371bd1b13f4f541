package county.bigtree.registry.pages.paper;

import java.util.Comparator;
import java.util.List;

import county.bigtree.registry.pages.picture.MapPicture;

/**
 * A map of the booklet.
 *
 * @param anchor of its heading, and what its words are called
 * @param all how many trees there are, with those that are not placed
 * @param placed how many are
 * @param legend those on the map that are named, by tag; none where they are too many
 */
public record BookletMap(String anchor, MapPicture picture, int all, int placed, List<MapPicture.Placed> legend) {

	/** Tags of more would hide each other. */
	private static final int FEW = 60;

	/**
	 * A map of the trees that are placed.
	 * @param named whether their tags are written, if they are few
	 */
	static BookletMap of(String anchor, MapPicture picture, int all, List<MapPicture.Placed> placed, boolean named) {
		return new BookletMap(anchor, picture, all, placed.size(), (named && placed.size() <= FEW)
				? placed.stream().sorted(Comparator.comparing(MapPicture.Placed::tag)).toList() : List.of());
	}

	public boolean named() {
		return !this.legend.isEmpty();
	}

	public List<MapTags.Tag> tags() {
		return named() ? MapTags.of(this.picture.marks()) : List.of();
	}

}
