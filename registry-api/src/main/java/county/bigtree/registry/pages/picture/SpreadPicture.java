package county.bigtree.registry.pages.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * What several groups found for one figure: a row for each with its figure and twice its
 * standard uncertainty to either side, the median as a line, the mean of those that agree
 * as a band. A group that is far off is drawn at the edge, so that the others stay apart.
 *
 * @param rows in the order of the groups
 * @param median where the line lies
 * @param bandFrom where the band begins
 */
public record SpreadPicture(int width, int height, List<Row> rows, double median, double bandFrom, double bandWidth,
		List<Tick> figures) {

	private static final int ROW = 40;

	private static final int TOP = 6;

	private static final int AXIS = 44;

	private static final int EDGE = 18;

	/** How many widths of those that agree one that is off may lie out. */
	private static final double FAR = 2;

	/**
	 * Draws.
	 * @param groups in any order, at least two of them
	 * @param meanU standard uncertainty of the mean
	 */
	public static SpreadPicture of(List<Found> groups, double median, double mean, double meanU) {
		double least = Math.min(mean - 2 * meanU, least(groups, false));
		double most = Math.max(mean + 2 * meanU, most(groups, false));
		double room = FAR * Math.max(most - least, 1e-6);
		Axis axis = Axis.over(Math.max(least - room, Math.min(least, least(groups, true))),
				Math.min(most + room, Math.max(most, most(groups, true))), EDGE, Drawn.WIDTH - EDGE);
		List<Row> rows = new ArrayList<>();
		for (Found group : groups) {
			rows.add(row(group, axis, TOP + rows.size() * ROW));
		}
		double bandFrom = axis.at(mean - 2 * meanU);
		return new SpreadPicture(Drawn.WIDTH, TOP + rows.size() * ROW + AXIS, rows, axis.at(median), bandFrom,
				Drawn.tenth(Math.max(axis.at(mean + 2 * meanU) - bandFrom, 1)), axis.ticks());
	}

	private static Row row(Found group, Axis axis, int y) {
		String beyond = (group.figure() < axis.from()) ? "below" : (group.figure() > axis.to()) ? "above" : "";
		return new Row(group.group(), y + 15, y + 28, axis.at(within(group.figure() - 2 * group.u(), axis)),
				axis.at(within(group.figure() + 2 * group.u(), axis)), axis.at(within(group.figure(), axis)),
				group.off(), beyond);
	}

	private static double within(double figure, Axis axis) {
		return Math.max(axis.from(), Math.min(axis.to(), figure));
	}

	private static double least(List<Found> groups, boolean off) {
		return groups.stream()
			.filter((group) -> group.off() == off)
			.mapToDouble((group) -> group.figure() - 2 * group.u())
			.min()
			.orElse(Double.POSITIVE_INFINITY);
	}

	private static double most(List<Found> groups, boolean off) {
		return groups.stream()
			.filter((group) -> group.off() == off)
			.mapToDouble((group) -> group.figure() + 2 * group.u())
			.max()
			.orElse(Double.NEGATIVE_INFINITY);
	}

	/** Where the axis lies. */
	public int bottom() {
		return this.height - AXIS + 4;
	}

	/**
	 * What one group found.
	 *
	 * @param u its standard uncertainty
	 * @param off whether it lies farther out than the class can explain
	 */
	public record Found(String group, double figure, double u, boolean off) {
	}

	/**
	 * A group.
	 *
	 * @param beyond below or above where its figure lies past the edge, else empty
	 */
	public record Row(String group, int labelY, int y, double from, double to, double at, boolean off, String beyond) {
	}

}
