package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
import java.util.List;

import net.sf.geographiclib.Geodesic;
import org.jspecify.annotations.Nullable;

/**
 * Places in an order to walk them: always on to the nearest that is left. That is not the
 * shortest way, but one that anybody can follow.
 *
 * @param stops in that order
 * @param metres from the first to the last as the crow flies
 */
record Walk(List<Stop> stops, double metres) {

	/**
	 * Orders the places.
	 * @param start where one sets out; null to begin with the first of them
	 */
	static Walk of(List<Place> places, @Nullable Place start) {
		List<Place> left = new ArrayList<>(places);
		List<Stop> stops = new ArrayList<>();
		Place at = start;
		double metres = 0;
		while (!left.isEmpty()) {
			Place next = (at == null) ? left.get(0) : nearest(at, left);
			double leg = (at == null) ? 0 : at.metresTo(next);
			metres += leg;
			stops.add(new Stop(next, leg));
			left.remove(next);
			at = next;
		}
		return new Walk(stops, metres);
	}

	private static Place nearest(Place at, List<Place> left) {
		Place nearest = left.get(0);
		for (Place place : left) {
			nearest = (at.metresTo(place) < at.metresTo(nearest)) ? place : nearest;
		}
		return nearest;
	}

	/**
	 * A place.
	 *
	 * @param visit the visit that is made there
	 */
	record Place(String visit, String tag, double latitude, double longitude) {

		double metresTo(Place other) {
			return Geodesic.WGS84.Inverse(this.latitude, this.longitude, other.latitude, other.longitude).s12;
		}

	}

	/**
	 * A stop.
	 *
	 * @param leg metres from the stop before, or from where one set out
	 */
	record Stop(Place place, double leg) {
	}

}
