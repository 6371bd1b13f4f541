package county.bigtree.registry.measuring.web;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Figures the way answers hold them.
 */
final class Rounded {

	private Rounded() {
	}

	static BigDecimal hundredths(double value) {
		return places(value, 2);
	}

	/** Of a probability. */
	static BigDecimal fourPlaces(double value) {
		return places(value, 4);
	}

	private static BigDecimal places(double value, int places) {
		return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
	}

}
