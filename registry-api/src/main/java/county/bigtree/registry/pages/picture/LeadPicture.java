package county.bigtree.registry.pages.picture;

import java.util.ArrayList;
import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * The trees at the top of a ranking as intervals of twice the standard uncertainty to
 * either side of their points: how far they overlap is how little their order says.
 *
 * @param rows in the order of the ranking
 */
public record LeadPicture(int width, int height, List<Row> rows, List<Tick> points) {

	private static final int ROW = 40;

	private static final int TOP = 6;

	private static final int AXIS = 44;

	private static final int EDGE = 16;

	/**
	 * Draws.
	 * @param trees in the order of the ranking, at least one
	 */
	public static LeadPicture of(List<Ranked> trees) {
		double least = trees.stream().mapToDouble((tree) -> tree.points() - 2 * tree.u()).min().orElseThrow();
		double most = trees.stream().mapToDouble((tree) -> tree.points() + 2 * tree.u()).max().orElseThrow();
		Axis points = Axis.over(least, most, EDGE, Drawn.WIDTH - EDGE);
		List<Row> rows = new ArrayList<>();
		for (Ranked tree : trees) {
			int y = TOP + rows.size() * ROW;
			rows.add(new Row(tree.tree(), tree.title(), y + 15, y + 27, points.at(tree.points() - 2 * tree.u()),
					points.at(tree.points() + 2 * tree.u()), points.at(tree.points())));
		}
		return new LeadPicture(Drawn.WIDTH, TOP + rows.size() * ROW + AXIS, rows, points.ticks());
	}

	/** Where the axis lies. */
	public int bottom() {
		return this.height - AXIS + 4;
	}

	/**
	 * A tree of the ranking.
	 *
	 * @param u standard uncertainty of the points
	 */
	public record Ranked(String tree, @Nullable String title, double points, double u) {
	}

	/** Its interval. */
	public record Row(String tree, @Nullable String title, int labelY, int y, double from, double to, double at) {
	}

}
