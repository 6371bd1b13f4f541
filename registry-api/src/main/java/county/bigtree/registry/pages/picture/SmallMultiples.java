package county.bigtree.registry.pages.picture;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Several small pictures on one scale of time and one of points, so that they can be
 * compared by eye: each a line that steps to the points of whoever leads.
 *
 * @param series in the order given
 * @param years the first and the last mark of the time axis
 * @param points the ends of the upright axis
 */
public record SmallMultiples(int width, int height, List<Small> series, List<Tick> years, List<Tick> points) {

	private static final int WIDTH = 240;

	private static final int HEIGHT = 128;

	private static final int LEFT = 38;

	private static final int RIGHT = WIDTH - 8;

	private static final int TOP = 12;

	private static final int BOTTOM = HEIGHT - 24;

	/** So many points are drawn at least, that what never changed lies amid them. */
	private static final double LEAST_SPAN = 10;

	/**
	 * Draws.
	 * @param series at least one step in all
	 */
	public static SmallMultiples of(List<Series> series, LocalDate today) {
		LocalDate first = steps(series).map(Step::from).min(LocalDate::compareTo).orElseThrow();
		LocalDate last = steps(series).map(Step::to).max(LocalDate::compareTo).filter(today::isBefore).orElse(today);
		TimeAxis time = TimeAxis.over(first, last, LEFT, RIGHT);
		double least = steps(series).mapToDouble(Step::points).min().orElseThrow();
		double most = steps(series).mapToDouble(Step::points).max().orElseThrow();
		double beside = Math.max(0, LEAST_SPAN - (most - least)) / 2;
		Axis points = Axis.over(least - beside, most + beside, BOTTOM, TOP);
		return new SmallMultiples(WIDTH, HEIGHT,
				series.stream()
					.map((one) -> new Small(one.key(), one.name(), one.told(), path(one.steps(), time, points)))
					.toList(),
				ends(time.ticks()), ends(points.ticks()));
	}

	private static Stream<Step> steps(List<Series> series) {
		return series.stream().flatMap((one) -> one.steps().stream());
	}

	/** Steps that follow at once are joined; a time without a leader is a gap. */
	private static String path(List<Step> steps, TimeAxis time, Axis points) {
		StringBuilder path = new StringBuilder();
		LocalDate until = null;
		for (Step step : steps) {
			double y = points.at(step.points());
			if (step.from().equals(until)) {
				path.append("V").append(y);
			}
			else {
				path.append('M').append(time.at(step.from())).append(' ').append(y);
			}
			path.append('H').append(time.at(step.to()));
			until = step.to();
		}
		return path.toString();
	}

	private static List<Tick> ends(List<Tick> ticks) {
		List<Tick> ends = new ArrayList<>();
		if (!ticks.isEmpty()) {
			ends.add(ticks.get(0));
		}
		if (ticks.size() > 1) {
			ends.add(ticks.get(ticks.size() - 1));
		}
		return ends;
	}

	/** Where the upright axis stands. */
	public int left() {
		return LEFT;
	}

	public int right() {
		return RIGHT;
	}

	/** Where the axis of time lies. */
	public int bottom() {
		return BOTTOM;
	}

	/**
	 * What one picture shows.
	 *
	 * @param told what is said of it to those who don't see it
	 * @param steps oldest first
	 */
	public record Series(String key, String name, String told, List<Step> steps) {
	}

	/**
	 * Points over a span of time.
	 *
	 * @param to the day on which it ended, or today
	 */
	public record Step(LocalDate from, LocalDate to, double points) {
	}

	/**
	 * A picture.
	 *
	 * @param line SVG path data
	 */
	public record Small(String key, String name, String told, String line) {
	}

}
