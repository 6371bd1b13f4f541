package county.bigtree.domain.classroom;

import county.bigtree.domain.quantity.Estimate;

/**
 * What a group's figure is held against.
 *
 * @param median of the class
 * @param reach how far from it a figure may lie by scatter alone
 */
record Yardstick(double median, double reach) {

	/** Farther than scatter, and than twice its own standard uncertainty. */
	boolean isOff(Estimate figure) {
		return Math.abs(figure.value() - this.median) > Math.max(this.reach, figure.expanded());
	}

	/** The figure would be one of the class if it were divided by the factor. */
	boolean fits(Estimate figure, double factor) {
		return !isOff(figure.times(1 / factor));
	}

	double ratio(Estimate figure) {
		return figure.value() / this.median;
	}

}
