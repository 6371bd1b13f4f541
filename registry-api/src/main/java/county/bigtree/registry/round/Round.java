package county.bigtree.registry.round;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import net.sf.geographiclib.Geodesic;
import org.jspecify.annotations.Nullable;

/**
 * Stops in an order that makes a short way, measured on the WGS 84 ellipsoid as the crow
 * flies: the register knows no roads.
 *
 * @param stops in that order
 * @param metres from where one sets out, or from the first stop, to the last
 */
public record Round(List<Stop> stops, double metres) {

	/**
	 * Puts the places in order.
	 * @param start where one sets out; null to begin at whichever makes the way short
	 */
	public static Round of(List<Place> places, @Nullable Place start) {
		List<Place> all = Stream.concat(Stream.ofNullable(start), places.stream()).toList();
		double[][] metres = metres(all);
		int[] order = ShortWay.through(metres, start != null);
		List<Stop> stops = new ArrayList<>();
		for (int at = (start != null) ? 1 : 0; at < order.length; at++) {
			stops.add(new Stop(all.get(order[at]), (at > 0) ? metres[order[at - 1]][order[at]] : 0));
		}
		return new Round(stops, ShortWay.length(metres, order));
	}

	private static double[][] metres(List<Place> places) {
		double[][] metres = new double[places.size()][places.size()];
		for (int one = 0; one < metres.length; one++) {
			for (int other = 0; other < one; other++) {
				metres[one][other] = places.get(one).metresTo(places.get(other));
				metres[other][one] = metres[one][other];
			}
		}
		return metres;
	}

	/**
	 * A place to go to.
	 *
	 * @param id what is there, for whoever asked
	 * @param latitude degrees north, WGS 84
	 * @param longitude degrees east
	 */
	public record Place(String id, double latitude, double longitude) {

		double metresTo(Place other) {
			return Geodesic.WGS84.Inverse(this.latitude, this.longitude, other.latitude, other.longitude).s12;
		}

	}

	/**
	 * A stop.
	 *
	 * @param leg metres from the stop before, or from where one set out
	 */
	public record Stop(Place place, double leg) {
	}

}
