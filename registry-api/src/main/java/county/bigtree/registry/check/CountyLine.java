package county.bigtree.registry.check;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The line of a county, as it was recorded in GeoJSON (RFC 7946): a Polygon, a
 * MultiPolygon, or a GeometryCollection of them.
 */
final class CountyLine implements Predicate<Position> {

	private static final GeometryFactory SHAPES = new GeometryFactory();

	private static final JsonMapper JSON = JsonMapper.shared();

	private final Geometry within;

	private CountyLine(Geometry within) {
		this.within = within;
	}

	/** Null where the line is not known, or can't be read. */
	static @Nullable CountyLine of(@Nullable String geoJson) {
		if (geoJson == null) {
			return null;
		}
		try {
			Polygon[] areas = polygons(JSON.readTree(geoJson)).toArray(Polygon[]::new);
			return (areas.length > 0) ? new CountyLine(SHAPES.createMultiPolygon(areas)) : null;
		}
		catch (JacksonException | IllegalArgumentException ex) {
			return null;
		}
	}

	private static Stream<Polygon> polygons(JsonNode geometry) {
		JsonNode coordinates = geometry.path("coordinates");
		return switch (geometry.path("type").asString("")) {
			case "Polygon" -> Stream.of(polygon(coordinates));
			case "MultiPolygon" -> coordinates.valueStream().map(CountyLine::polygon);
			case "GeometryCollection" -> geometry.path("geometries").valueStream().flatMap(CountyLine::polygons);
			default -> Stream.empty();
		};
	}

	/** The outer ring, then its holes. */
	private static Polygon polygon(JsonNode rings) {
		List<LinearRing> read = rings.valueStream().map(CountyLine::ring).toList();
		if (read.isEmpty()) {
			throw new IllegalArgumentException("a polygon without a ring");
		}
		return SHAPES.createPolygon(read.get(0), read.subList(1, read.size()).toArray(LinearRing[]::new));
	}

	private static LinearRing ring(JsonNode positions) {
		return SHAPES.createLinearRing(positions.valueStream()
			.map((position) -> new Coordinate(position.path(0).doubleValue(), position.path(1).doubleValue()))
			.toArray(Coordinate[]::new));
	}

	@Override
	public boolean test(Position position) {
		return this.within.covers(point(position));
	}

	/** Whether the place lies within so many degrees of the line, or outside it. */
	boolean isNear(Position position, double degrees) {
		Point point = point(position);
		return !this.within.covers(point) || IntStream.range(0, this.within.getNumGeometries())
			.mapToObj(this.within::getGeometryN)
			.anyMatch((part) -> part.getBoundary().isWithinDistance(point, degrees));
	}

	private static Point point(Position position) {
		return SHAPES.createPoint(new Coordinate(position.longitude(), position.latitude()));
	}

}
