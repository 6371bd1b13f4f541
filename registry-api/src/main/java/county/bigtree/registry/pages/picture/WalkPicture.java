package county.bigtree.registry.pages.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A small map of places in the order in which they are walked to: north is up, and both
 * directions have one scale. It has no ground to show, so that it needs no other host.
 *
 * @param height in its own units, as wide as {@value #WIDTH}
 * @param stops in walking order
 * @param scale how long the bar of {@code bar} units is
 */
public record WalkPicture(double height, List<Stop> stops, double bar, Scale scale) {

	static final double WIDTH = 600;

	private static final double MARGIN = 34;

	private static final double LOWEST = 160;

	private static final double HIGHEST = 560;

	private static final double LEAST_METRES = 200;

	/** WGS 84 at 45 degrees: good to half a percent anywhere, for a picture. */
	private static final double METRES_A_DEGREE = 111_132;

	private static final double[] BARS = { 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000 };

	/**
	 * Draws the places, at least one.
	 */
	public static WalkPicture of(List<Place> places) {
		double middle = places.stream().mapToDouble(Place::latitude).average().orElse(0);
		double east = METRES_A_DEGREE * Math.cos(Math.toRadians(middle));
		double west = places.stream().mapToDouble(Place::longitude).min().orElse(0) * east;
		double north = places.stream().mapToDouble(Place::latitude).max().orElse(0) * METRES_A_DEGREE;
		double wide = places.stream().mapToDouble(Place::longitude).max().orElse(0) * east - west;
		double tall = north - places.stream().mapToDouble(Place::latitude).min().orElse(0) * METRES_A_DEGREE;
		double metres = Math.max(LEAST_METRES, Math.max(wide, tall * (WIDTH - 2 * MARGIN) / (HIGHEST - 2 * MARGIN)));
		double units = (WIDTH - 2 * MARGIN) / metres;
		double height = Math.min(HIGHEST, Math.max(LOWEST, tall * units + 2 * MARGIN + 30));
		double left = (WIDTH - wide * units) / 2;
		double top = (height - 30 - tall * units) / 2;
		List<Stop> stops = new ArrayList<>();
		for (Place place : places) {
			stops.add(new Stop(stops.size() + 1, place.label(), left + (place.longitude() * east - west) * units,
					top + (north - place.latitude() * METRES_A_DEGREE) * units));
		}
		double length = bar(metres / 3);
		return new WalkPicture(height, stops, length * units, new Scale(length));
	}

	private static double bar(double atMost) {
		double best = BARS[0];
		for (double one : BARS) {
			best = (one <= atMost) ? one : best;
		}
		return best;
	}

	public double width() {
		return WIDTH;
	}

	/** The way from stop to stop. */
	public String way() {
		return this.stops.stream()
			.map((stop) -> Math.round(stop.x() * 10) / 10.0 + "," + Math.round(stop.y() * 10) / 10.0)
			.collect(Collectors.joining(" "));
	}

	/**
	 * A place to go to.
	 *
	 * @param label its tag
	 * @param latitude degrees north, WGS 84
	 * @param longitude degrees east
	 */
	public record Place(String label, double latitude, double longitude) {
	}

	/**
	 * A place on the map.
	 *
	 * @param number in walking order, from 1
	 */
	public record Stop(int number, String label, double x, double y) {
	}

	/**
	 * How long the scale's bar is.
	 */
	public record Scale(double metres) {

		private static final double A_MILE = 1609.344;

		private static final double A_KILOMETRE = 1000;

		/** In metres or kilometres, and in miles. */
		public String told() {
			String length = (this.metres < A_KILOMETRE) ? Math.round(this.metres) + " m"
					: Math.round(this.metres / A_KILOMETRE) + " km";
			return "%s (%.2f mi)".formatted(length, this.metres / A_MILE);
		}

	}

}
