package county.bigtree.registry.pages.picture;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;

/**
 * A map drawn without a map service: equirectangular, true to scale at its middle
 * latitude (J. P. Snyder, Map Projections: A Working Manual, USGS Professional Paper
 * 1395, 1987, section 12). Trees shown at the same place share a mark.
 *
 * @param boundary the outline as SVG path data, empty where none is known
 * @param marks one for each place, the largest areas first
 * @param others further places as SVG path data: dots without a name
 * @param scale a round distance and how long it is drawn
 */
public record MapPicture(int width, int height, String boundary, List<Mark> marks, String others, Scale scale) {

	private static final int EDGE = 14;

	private static final int FOOT = 30;

	private static final double METRES_PER_DEGREE = 111_320;

	private static final double KILOMETRE = 1000;

	/** By definition 5280 ft of 0.3048 m. */
	private static final double MILE = 1609.344;

	private static final double[] ROUND = { 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500 };

	/** Points of an outline nearer to each other than this are one. */
	private static final double STEP = 0.8;

	/** What is drawn is at least so wide and high, in degrees. */
	private static final double LEAST_SPAN = 0.02;

	/**
	 * Draws.
	 * @param outline rings of the boundary; none where it is not known
	 * @param trees to be named
	 * @param others to be dotted
	 * @param metric whether the scale is in kilometres, else in miles
	 * @return null where there is nothing to draw
	 */
	public static @Nullable MapPicture of(List<List<Point>> outline, List<Placed> trees, Collection<Point> others,
			boolean metric) {
		List<Point> all = Stream
			.of(outline.stream().flatMap(List::stream), trees.stream().map(Placed::at), others.stream())
			.flatMap((points) -> points)
			.toList();
		if (all.isEmpty()) {
			return null;
		}
		Projection projection = Projection.over(all);
		return new MapPicture(Drawn.WIDTH, projection.height(), path(outline, projection), marks(trees, projection),
				dots(others, projection), Scale.of(projection, metric));
	}

	private static String path(List<List<Point>> outline, Projection projection) {
		StringBuilder path = new StringBuilder();
		for (List<Point> ring : outline) {
			double x = Double.NaN;
			double y = Double.NaN;
			for (Point point : ring) {
				double nextX = projection.x(point);
				double nextY = projection.y(point);
				if (Double.isNaN(x)) {
					path.append('M').append(number(nextX)).append(' ').append(number(nextY));
				}
				else if (Math.hypot(nextX - x, nextY - y) < STEP) {
					continue;
				}
				else {
					path.append('L').append(number(nextX)).append(' ').append(number(nextY));
				}
				x = nextX;
				y = nextY;
			}
			path.append('Z');
		}
		return path.toString();
	}

	private static List<Mark> marks(List<Placed> trees, Projection projection) {
		Map<Point, List<Placed>> places = new LinkedHashMap<>();
		trees.forEach((tree) -> places.computeIfAbsent(tree.at(), (at) -> new ArrayList<>()).add(tree));
		return places.entrySet().stream().map((place) -> {
			double metres = place.getValue().stream().mapToDouble(Placed::withinMetres).max().orElse(0);
			return new Mark(projection.x(place.getKey()), projection.y(place.getKey()),
					Drawn.tenth(metres * projection.pixelsPerMetre()), metres, place.getKey(), place.getValue());
		}).sorted((a, b) -> Double.compare(b.withinMetres(), a.withinMetres())).toList();
	}

	/** A line of no length is drawn as its two round ends. */
	private static String dots(Collection<Point> others, Projection projection) {
		return others.stream()
			.distinct()
			.map((point) -> "M" + number(projection.x(point)) + " " + number(projection.y(point)) + "h0")
			.distinct()
			.collect(Collectors.joining());
	}

	private static String number(double place) {
		return (place == Math.rint(place)) ? String.valueOf((long) place) : String.valueOf(place);
	}

	/**
	 * A point on earth, in degrees.
	 */
	public record Point(double longitude, double latitude) {
	}

	/**
	 * A tree and where it is shown.
	 *
	 * @param named what it is called
	 * @param withinMetres how far from there it may stand; 0 for exactly there
	 */
	public record Placed(String tag, String named, Point at, double withinMetres) {
	}

	/**
	 * All trees shown at one place.
	 *
	 * @param radius of the area in which they stand; 0 for exactly there
	 */
	public record Mark(double x, double y, double radius, double withinMetres, Point at, List<Placed> trees) {

		/** How many trees. */
		public int count() {
			return this.trees.size();
		}

		/** The place, as programs read it. */
		public String place() {
			return String.format(Locale.ROOT, "%.5f,%.5f", this.at.latitude(), this.at.longitude());
		}

	}

	/** A bar and the distance it stands for, with its unit. */
	public record Scale(String distance, double width) {

		static Scale of(Projection projection, boolean metric) {
			double pixels = projection.pixelsPerMetre() * (metric ? KILOMETRE : MILE);
			double distance = ROUND[0];
			for (double one : ROUND) {
				if (one * pixels <= Drawn.WIDTH / 4.0) {
					distance = one;
				}
			}
			return new Scale(number(distance) + (metric ? " km" : " mi"), Drawn.tenth(distance * pixels));
		}

	}

	/** From degrees to the drawing. */
	private record Projection(double west, double north, double perLongitude, double perLatitude, int height) {

		private static final double HIGHEST = 1.25 * Drawn.WIDTH;

		static Projection over(List<Point> points) {
			double west = points.stream().mapToDouble(Point::longitude).min().orElseThrow();
			double east = points.stream().mapToDouble(Point::longitude).max().orElseThrow();
			double south = points.stream().mapToDouble(Point::latitude).min().orElseThrow();
			double north = points.stream().mapToDouble(Point::latitude).max().orElseThrow();
			double wide = Math.max(east - west, LEAST_SPAN);
			double high = Math.max(north - south, LEAST_SPAN);
			double squeeze = Math.max(0.01, Math.cos(Math.toRadians((south + north) / 2)));
			double room = Drawn.WIDTH - 2 * EDGE;
			double perLatitude = Math.min(room / (wide * squeeze), (HIGHEST - 2 * EDGE) / high);
			double perLongitude = perLatitude * squeeze;
			double left = (Drawn.WIDTH - wide * perLongitude) / 2;
			double middle = (west + east) / 2 - wide / 2;
			return new Projection(middle - left / perLongitude, (south + north) / 2 + high / 2 + EDGE / perLatitude,
					perLongitude, perLatitude, (int) Math.ceil(high * perLatitude) + 2 * EDGE + FOOT);
		}

		double x(Point point) {
			return Drawn.tenth((point.longitude() - this.west) * this.perLongitude);
		}

		double y(Point point) {
			return Drawn.tenth((this.north - point.latitude()) * this.perLatitude);
		}

		double pixelsPerMetre() {
			return this.perLatitude / METRES_PER_DEGREE;
		}

	}

}
