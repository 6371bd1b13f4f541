package county.bigtree.registry.check;

import county.bigtree.domain.place.Position;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.geojson.GeoJsonReader;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Lines of counties in GeoJSON, read as by a reader of GeoJSON that others made (JTS).
 */
class CountyLineTest {

	private static final String SQUARE = "[[-88, 40], [-87, 40], [-87, 41], [-88, 41], [-88, 40]]";

	private static final String HOLE = "[[-87.6, 40.4], [-87.4, 40.4], [-87.4, 40.6], [-87.6, 40.6], [-87.6, 40.4]]";

	private static final String FAR = "[[-86, 40], [-85, 40], [-85.5, 41], [-86, 40]]";

	@ParameterizedTest
	@ValueSource(strings = { "{\"type\": \"Polygon\", \"coordinates\": [" + SQUARE + "]}",
			"{\"type\": \"Polygon\", \"coordinates\": [" + SQUARE + ", " + HOLE + "]}",
			"{\"type\": \"MultiPolygon\", \"coordinates\": [[" + SQUARE + ", " + HOLE + "], [" + FAR + "]]}",
			"{\"type\": \"GeometryCollection\", \"geometries\": [{\"type\": \"Polygon\", \"coordinates\": [" + FAR
					+ "]}]}" })
	void coversWhatAnotherReaderSays(String geoJson) throws Exception {
		CountyLine line = CountyLine.of(geoJson);
		Geometry other = new GeoJsonReader().read(geoJson);
		assertThat(line).isNotNull();
		for (double latitude = 39.75; latitude < 41.3; latitude += 0.125) {
			for (double longitude = -88.25; longitude < -84.8; longitude += 0.125) {
				assertThat(line.test(new Position(latitude, longitude, 8))).as(latitude + " " + longitude)
					.isEqualTo(other.covers(new GeometryFactory().createPoint(new Coordinate(longitude, latitude))));
			}
		}
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "{", "[]", "{\"type\": \"Point\", \"coordinates\": [-87, 40]}",
			"{\"type\": \"Polygon\", \"coordinates\": []}",
			"{\"type\": \"Polygon\", \"coordinates\": [[[-87, 40], [-86, 41]]]}",
			"{\"type\": \"Polygon\", \"coordinates\": [[[-87, 40], [-86, 41], [-86, 40]]]}" })
	void knowsNoLineWhereNoneCanBeRead(String geoJson) {
		assertThat(CountyLine.of(geoJson)).isNull();
	}

	@Test
	void isNearInsideByTheLineAndEverywhereOutside() {
		CountyLine line = CountyLine.of("{\"type\": \"Polygon\", \"coordinates\": [" + SQUARE + "]}");
		assertThat(line).isNotNull();
		assertThat(line.isNear(new Position(40.5, -87.5, 8), 0.01)).isFalse();
		assertThat(line.isNear(new Position(40.5, -87.005, 8), 0.01)).isTrue();
		assertThat(line.isNear(new Position(42, -87.5, 8), 0.01)).isTrue();
	}

}
