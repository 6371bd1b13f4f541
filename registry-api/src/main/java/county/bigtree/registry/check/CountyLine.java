package county.bigtree.registry.check;

import java.util.function.Predicate;

import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
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
		return this.within.covers(POINTS.createPoint(new Coordinate(position.longitude(), position.latitude())));
	}

}
