package county.bigtree.registry.pages;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.lookup.ReadPlaces;
import county.bigtree.registry.pages.picture.MapPicture;
import county.bigtree.registry.pages.picture.MapPicture.Placed;
import county.bigtree.registry.pages.picture.MapPicture.Point;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Component;

/**
 * The map of a county's leaders: each where the public may see it. Those on the page are
 * named, the others of the list are dots.
 */
@Component
public class CountyMap {

	private final ReadCounties counties;

	private final ReadPlaces places;

	CountyMap(ReadCounties counties, ReadPlaces places) {
		this.counties = counties;
		this.places = places;
	}

	Drawn of(ReadCounties.County county, CountyLines.Listing listing, Units units) {
		List<CountyLines.Line> led = listing.all().stream().filter((line) -> line.leader() != null).toList();
		Map<UUID, ReadPlaces.Place> shown = this.places.of(led.stream().map(CountyLines.Line::tree).toList());
		List<Placed> named = new ArrayList<>();
		listing.page().stream().filter((line) -> line.leader() != null).forEach((line) -> {
			ReadPlaces.Place place = shown.get(line.tree());
			if (place != null) {
				named.add(placed(line, place));
			}
		});
		Set<UUID> here = new HashSet<>(
				listing.page().stream().filter((line) -> line.leader() != null).map(CountyLines.Line::tree).toList());
		List<Point> others = led.stream()
			.map(CountyLines.Line::tree)
			.filter((tree) -> !here.contains(tree))
			.map(shown::get)
			.filter(Objects::nonNull)
			.map((place) -> at(Objects.requireNonNull(place)))
			.toList();
		return new Drawn(MapPicture.of(outline(this.counties.boundary(county)), named, others, units.metric()),
				led.size(), led.size() - shown.size());
	}

	/** Trees that are named, on the county's outline; null where neither is known. */
	public @Nullable MapPicture of(ReadCounties.County county, List<Placed> named) {
		return MapPicture.of(outline(this.counties.boundary(county)), named, List.of(), false);
	}

	/** A tree where it may be seen. */
	public Placed placed(String tag, String named, ReadPlaces.Place place) {
		return new Placed(tag, named, at(place), place.exact() ? 0 : place.position().accuracyMetres());
	}

	private Placed placed(CountyLines.Line line, ReadPlaces.Place place) {
		String tag = Objects.requireNonNull(Objects.requireNonNull(line.leader()).tag());
		return placed(tag, line.species().commonName(), place);
	}

	private static Point at(ReadPlaces.Place place) {
		return new Point(place.position().longitude(), place.position().latitude());
	}

	/** The rings of a polygon or of several. */
	private static List<List<Point>> outline(@Nullable JsonNode boundary) {
		List<List<Point>> rings = new ArrayList<>();
		if (boundary != null) {
			addRings(boundary.path("coordinates"), rings);
		}
		return rings;
	}

	private static void addRings(JsonNode coordinates, List<List<Point>> rings) {
		if (coordinates.path(0).path(0).isNumber()) {
			List<Point> ring = new ArrayList<>();
			coordinates.forEach((point) -> ring.add(new Point(point.path(0).asDouble(), point.path(1).asDouble())));
			rings.add(ring);
		}
		else {
			coordinates.forEach((part) -> addRings(part, rings));
		}
	}

	/**
	 * The map and what it leaves out.
	 *
	 * @param picture null where neither the boundary nor any place is known
	 * @param leaders how many the list has
	 * @param unplaced of how many of them no place is shown
	 */
	record Drawn(@Nullable MapPicture picture, int leaders, int unplaced) {
	}

}
