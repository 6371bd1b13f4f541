package county.bigtree.domain.review;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.quantity.Figures;
import org.jspecify.annotations.Nullable;

/**
 * How far apart two measurements of the same thing by practised people lie once in twenty
 * times: 1.96 √2 standard deviations (ISO 5725-6:1994, 4.1, from memory). The deviations
 * between trained observers are those of Luoma and others 2017, Forests 8(2):38: 0.3 cm
 * or 1.5 % of the diameter, 0.5 m or 2.9 % of the height. For the spread none was found.
 */
public final class RepeatabilityLimit {

	/** The normal quantile of 0.975, for a difference of two. */
	private static final double PAIR = 1.959964 * Math.sqrt(2);

	private static final double GIRTH_INCHES = Math.PI * 0.3 / 2.54;

	private static final double GIRTH_SHARE = 0.015;

	private static final double HEIGHT_FEET = 0.5 / 0.3048;

	private static final double HEIGHT_SHARE = 0.029;

	private RepeatabilityLimit() {
	}

	/** In the unit of the standard deviation of one measurement. */
	public static double of(double standardDeviation) {
		return PAIR * Figures.notNegative("standardDeviation", standardDeviation);
	}

	/** For a figure of this size, or null where no deviation is published. */
	static @Nullable Double of(Kind kind, double figure) {
		return switch (kind) {
			case GIRTH -> of(Math.max(GIRTH_INCHES, GIRTH_SHARE * figure));
			case HEIGHT -> of(Math.max(HEIGHT_FEET, HEIGHT_SHARE * figure));
			case CROWN -> null;
		};
	}

}
