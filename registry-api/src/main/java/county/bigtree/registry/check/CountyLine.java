package county.bigtree.registry.check;

import java.util.function.Predicate;
import java.util.stream.IntStream;

import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.geojson.GeoJsonReader;

/**
 * The line of a county, as it was recorded in GeoJSON.
 */
final class CountyLine implements Predicate<Position> {

	private static final GeometryFactory POINTS = new GeometryFactory();

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
			return new CountyLine(new GeoJsonReader().read(geoJson));
		}
		catch (ParseException | IllegalArgumentException ex) {
			return null;
		}
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
		return POINTS.createPoint(new Coordinate(position.longitude(), position.latitude()));
	}

}
