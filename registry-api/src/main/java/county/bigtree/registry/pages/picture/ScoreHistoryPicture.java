package county.bigtree.registry.pages.picture;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

import org.jspecify.annotations.Nullable;

/**
 * The points of a tree through time: a step for each counting measurement, with twice its
 * standard uncertainty to either side as a band, and a mark that tells how the figures
 * came to count. Measurements withdrawn since are marked beside the line.
 *
 * @param spans what held, oldest first
 * @param marks one for each measurement
 * @param years marks of the time axis
 * @param points marks of the upright axis
 */
public record ScoreHistoryPicture(int width, int height, List<Span> spans, List<Mark> marks, List<Tick> years,
		List<Tick> points) {

	private static final int HEIGHT = 322;

	/** Beneath what is said of the mark that is pointed at. */
	private static final int TOP = 84;

	private static final int BOTTOM = HEIGHT - 34;

	/**
	 * Draws.
	 * @param scores in any order, at least one
	 * @param until the last day shown: today, or the day on which the tree left the books
	 */
	public static ScoreHistoryPicture of(List<Scored> scores, LocalDate until) {
		List<Scored> sorted = scores.stream().sorted(Comparator.comparing(Scored::day)).toList();
		TimeAxis time = TimeAxis.over(sorted.get(0).day(), until, Drawn.LEFT, Drawn.WIDTH - Drawn.RIGHT);
		double least = sorted.stream().mapToDouble((score) -> score.points() - 2 * score.u()).min().orElseThrow();
		double most = sorted.stream().mapToDouble((score) -> score.points() + 2 * score.u()).max().orElseThrow();
		Axis points = Axis.over(least, most, BOTTOM, TOP);
		List<Scored> held = sorted.stream().filter((score) -> !score.how().equals(Scored.WITHDRAWN)).toList();
		List<Span> spans = IntStream.range(0, held.size())
			.mapToObj((i) -> span(held.get(i), (i + 1 < held.size()) ? held.get(i + 1).day() : until, time, points))
			.toList();
		List<Mark> marks = sorted.stream()
			.map((score) -> new Mark(time.at(score.day()), points.at(score.points()), score.how(), score.told(),
					score.why(), score.by()))
			.toList();
		return new ScoreHistoryPicture(Drawn.WIDTH, HEIGHT, spans, marks, time.ticks(), points.ticks());
	}

	private static Span span(Scored score, LocalDate next, TimeAxis time, Axis points) {
		double x = time.at(score.day());
		double top = points.at(score.points() + 2 * score.u());
		double bottom = points.at(score.points() - 2 * score.u());
		return new Span(x, Drawn.tenth(Math.max(time.at(next) - x, 1)), points.at(score.points()), top,
				Drawn.tenth(Math.max(bottom - top, 1)));
	}

	/** Where the band of the pictures begins and ends. */
	public int bottom() {
		return BOTTOM;
	}

	public int left() {
		return Drawn.LEFT;
	}

	public int right() {
		return Drawn.WIDTH - Drawn.RIGHT;
	}

	/**
	 * A measurement that counts or counted.
	 *
	 * @param u standard uncertainty of the points
	 * @param how confirmed, checked, carried-over or withdrawn
	 * @param told what is said of it where it is pointed at
	 * @param why it counts, or counts no more
	 * @param by which method the height was measured; empty where that isn't known
	 */
	public record Scored(LocalDate day, double points, double u, String how, String told, String why, String by) {

		/** It counted, and does no more. */
		public static final String WITHDRAWN = "withdrawn";

		/** How a measurement came to count, by its basis. */
		public static String how(String basis, @Nullable Object withdrawnAt) {
			if (withdrawnAt != null) {
				return WITHDRAWN;
			}
			return basis.equals("filed") ? "confirmed" : basis;
		}

	}

	/** A stretch of time over which one score held. */
	public record Span(double x, double width, double y, double bandY, double bandHeight) {
	}

	/** A measurement. */
	public record Mark(double x, double y, String how, String told, String why, String by) {
	}

}
