package county.bigtree.registry.pages.picture;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/**
 * Who held the titles of a species through time: a row for each tree, a bar for each
 * span. The trees that held one last stand at the top.
 *
 * @param rows at most as many as fit
 * @param left out trees for which there was no room
 */
public record LeadersPicture(int width, int height, List<Row> rows, List<Tick> years, int leftOut) {

	private static final int MOST = 12;

	private static final int ROW = 40;

	private static final int LABEL = 16;

	private static final int BAR = 12;

	/** Room for what is said of the bar that is pointed at. */
	private static final int TOP = 54;

	private static final int AXIS = 28;

	private static final int EDGE = 10;

	/**
	 * Draws.
	 * @param spans the newest first, at least one
	 */
	public static LeadersPicture of(List<Held> spans, LocalDate today) {
		LocalDate first = spans.stream().map(Held::from).min(Comparator.naturalOrder()).orElseThrow();
		TimeAxis time = TimeAxis.over(first, today, EDGE, Drawn.WIDTH - EDGE);
		Map<String, List<Held>> byTree = new LinkedHashMap<>();
		spans.stream()
			.sorted(Comparator.comparing((Held held) -> held.to() != null)
				.thenComparing((held) -> held.until(today), Comparator.reverseOrder()))
			.forEach((held) -> byTree.computeIfAbsent(held.tree(), (tree) -> new ArrayList<>()).add(held));
		List<Row> rows = new ArrayList<>();
		for (List<Held> spansOfOne : byTree.values()) {
			if (rows.size() < MOST) {
				int y = TOP + rows.size() * ROW;
				rows.add(new Row(spansOfOne.get(0).label(), y + LABEL,
						spansOfOne.stream().map((held) -> bar(held, today, time, y + LABEL + 5)).toList()));
			}
		}
		return new LeadersPicture(Drawn.WIDTH, TOP + rows.size() * ROW + AXIS, rows, time.ticks(),
				byTree.size() - rows.size());
	}

	private static Bar bar(Held held, LocalDate today, TimeAxis time, int y) {
		double x = time.at(held.from());
		return new Bar(x, y, Drawn.tenth(Math.max(time.at(held.until(today)) - x, 2)), BAR, held.title(),
				held.to() == null, held.told(), held.why());
	}

	/** Where the axis lies. */
	public int bottom() {
		return this.height - AXIS + 4;
	}

	/**
	 * A title over a span of time.
	 *
	 * @param tree what is alike for spans of one tree
	 * @param label its tag, or what is said in its place
	 * @param to the day on which it ended, or null while it is held
	 * @param told what is said of it where it is pointed at
	 * @param why it ended, or null while it is held
	 */
	public record Held(String tree, String label, String title, LocalDate from, @Nullable LocalDate to, String told,
			@Nullable String why) {

		/** When it ended, or today. */
		public LocalDate until(LocalDate today) {
			return (this.to != null) ? this.to : today;
		}

	}

	/** A tree. */
	public record Row(String tree, int y, List<Bar> bars) {
	}

	/** A span. */
	public record Bar(double x, double y, double width, double height, String title, boolean held, String told,
			@Nullable String why) {
	}

}
