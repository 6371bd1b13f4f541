package county.bigtree.registry.pages.picture;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Maps a range of figures onto a stretch of a picture. The range is widened to whole
 * steps of 1, 2 or 5 times a power of ten.
 *
 * @param from the least figure
 * @param to the largest, above it
 * @param step between two marks of the axis
 * @param start where the least figure lies in the picture
 * @param end where the largest lies; may be less than start, as upright axes run
 */
record Axis(double from, double to, double step, double start, double end) {

	private static final int MOST_STEPS = 6;

	/**
	 * An axis on which all figures from least to most lie.
	 */
	static Axis over(double least, double most, double start, double end) {
		double range = Math.max(most - least, 1e-6);
		double step = step(range / MOST_STEPS);
		double from = Math.floor(least / step) * step;
		double to = Math.ceil(most / step) * step;
		return new Axis(from, (to > from) ? to : from + step, step, start, end);
	}

	double at(double figure) {
		return Drawn.tenth(this.start + (figure - this.from) / (this.to - this.from) * (this.end - this.start));
	}

	List<Tick> ticks() {
		List<Tick> ticks = new ArrayList<>();
		int steps = (int) Math.round((this.to - this.from) / this.step);
		for (int i = 0; i <= steps; i++) {
			double figure = this.from + i * this.step;
			ticks.add(new Tick(at(figure), label(figure)));
		}
		return ticks;
	}

	private String label(double figure) {
		int places = Math.max(0, (int) Math.ceil(-Math.log10(this.step) - 1e-9));
		return BigDecimal.valueOf(figure).setScale(places, java.math.RoundingMode.HALF_UP).toPlainString();
	}

	private static double step(double least) {
		double power = Math.pow(10, Math.floor(Math.log10(least)));
		for (int times : new int[] { 1, 2, 5 }) {
			if (times * power >= least * (1 - 1e-9)) {
				return times * power;
			}
		}
		return 10 * power;
	}

}
