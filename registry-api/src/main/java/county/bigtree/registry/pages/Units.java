package county.bigtree.registry.pages;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/**
 * In which units a reader wants lengths: a girth in inches or centimetres, heights and
 * spreads in feet or metres. Points stay points.
 */
public enum Units {

	FEET, METRIC;

	private static final double CENTIMETRES = 2.54;

	private static final double METRES = 0.3048;

	private static final double METRES_PER_MILE = 1609.344;

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

	/** A distance over land with its unit, in two figures at most where it is short. */
	public String distance(double metres) {
		double shorter = metric() ? metres : metres / METRES;
		double longer = metric() ? metres / 1000 : metres / METRES_PER_MILE;
		return (shorter < 1000) ? new BigDecimal(shorter).round(new MathContext(2)).toBigInteger() + " " + lengthUnit()
				: String.format(Locale.US, "%.1f", longer) + (metric() ? " km" : " mi");
	}

}
