package county.bigtree.domain.check;

import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

import county.bigtree.domain.place.Position;

/**
 * A place outside the county that lies in it with latitude and longitude swapped, or with
 * the other sign, which is proposed.
 */
final class SwappedCoordinates implements Check {

	private static final double QUARTER = 90;

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Position at = filed.position();
		Predicate<Position> county = known.county();
		if (at == null || county == null || county.test(at)) {
			return Optional.empty();
		}
		return find(at, county).map((meant) -> Finding.question("swapped-coordinates",
				"The place lies outside the county, but %s, %s lies in it: were latitude and longitude swapped, or a minus sign lost?"
					.formatted(meant.latitude(), meant.longitude()),
				new Finding.Numbers().with("proposedLatitude", String.valueOf(meant.latitude()))
					.with("proposedLongitude", String.valueOf(meant.longitude()))));
	}

	static Optional<Position> find(Position at, Predicate<Position> county) {
		double lat = at.latitude();
		double lon = at.longitude();
		return Stream
			.of(new double[] { lon, lat }, new double[] { lat, -lon }, new double[] { -lat, lon },
					new double[] { -lat, -lon }, new double[] { -lon, lat }, new double[] { lon, -lat },
					new double[] { -lon, -lat })
			.filter((pair) -> Math.abs(pair[0]) <= QUARTER)
			.map((pair) -> new Position(pair[0], pair[1], at.accuracyMetres()))
			.filter(county)
			.findFirst();
	}

}
