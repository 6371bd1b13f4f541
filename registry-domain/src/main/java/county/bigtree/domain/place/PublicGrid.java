package county.bigtree.domain.place;

/**
 * The grid on which positions are shown to the public: cells about 1.1 km high and wide
 * everywhere on earth. Every point of a cell is shown as the cell's centre and as equally
 * unsure, so that asking often, or comparing answers, tells nothing more.
 */
final class PublicGrid {

	private static final int ROWS_PER_DEGREE = 100;

	private static final double CIRCLE = 360;

	private static final double QUARTER = 90;

	/** In metres: from a cell's centre to its corner, rounded up. */
	private static final double REACH_METRES = 800;

	private PublicGrid() {
	}

	static Position shown(Position exact) {
		double latitude = centre(exact.latitude(), -QUARTER, QUARTER, 2 * (int) QUARTER * ROWS_PER_DEGREE);
		double longitude = centre(exact.longitude(), -CIRCLE / 2, CIRCLE / 2, columns(latitude));
		return new Position(latitude, longitude, Math.max(REACH_METRES, exact.accuracyMetres()));
	}

	/** Whole cells around the earth in the row with this middle. */
	private static int columns(double latitude) {
		return (int) Math.max(1, Math.round(CIRCLE * ROWS_PER_DEGREE * Math.cos(Math.toRadians(latitude))));
	}

	private static double centre(double value, double from, double to, int cells) {
		double width = (to - from) / cells;
		double cell = Math.min(cells - 1, Math.floor((value - from) / width));
		return from + (cell + 0.5) * width;
	}

}
