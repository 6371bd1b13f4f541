package county.bigtree.registry.pages;

/**
 * In which units a reader wants lengths: a girth in inches or centimetres, heights and
 * spreads in feet or metres. Points stay points.
 */
public enum Units {

	FEET, METRIC;

	private static final double CENTIMETRES = 2.54;

	private static final double METRES = 0.3048;

	static Units of(String word) {
		return "metric".equals(word) ? METRIC : FEET;
	}

	public boolean metric() {
		return this == METRIC;
	}

	public String word() {
		return metric() ? "metric" : "feet";
	}

	/** Of a girth. */
	public String girthUnit() {
		return metric() ? "cm" : "in";
	}

	/** Of a height or a spread. */
	public String lengthUnit() {
		return metric() ? "m" : "ft";
	}

	/** Of inches. */
	public double girth(double inches) {
		return metric() ? inches * CENTIMETRES : inches;
	}

	/** Of feet. */
	public double length(double feet) {
		return metric() ? feet * METRES : feet;
	}

}
