package county.bigtree.domain.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Checks and texts that every entered figure shares.
 */
public final class Figures {

	private Figures() {
	}

	/**
	 * Refuses NaN and the infinities.
	 * @return the value, finite
	 */
	public static double finite(String path, double value) {
		if (!Double.isFinite(value)) {
			throw new InvalidReadingException(path, Flaw.NOT_A_NUMBER, "must be a finite number but was " + value);
		}
		return value;
	}

	public static double positive(String path, double value) {
		if (finite(path, value) <= 0) {
			throw new InvalidReadingException(path, Flaw.NOT_POSITIVE,
					"must be greater than 0 but was " + plain(value));
		}
		return value;
	}

	public static double notNegative(String path, double value) {
		return within(path, value, 0, Double.MAX_VALUE, "0 or more");
	}

	/** Refuses what lies outside the closed range; {@code range} says it in words. */
	public static double within(String path, double value, double least, double most, String range) {
		if (finite(path, value) < least || value > most) {
			throw new InvalidReadingException(path, Flaw.OUT_OF_RANGE, "must be " + range + " but was " + plain(value));
		}
		return value;
	}

	/** The shortest decimal that is this number, without exponent: 30, 3.5, 0.05. */
	public static String plain(double value) {
		return Double.isFinite(value) ? trimmed(BigDecimal.valueOf(value)) : Double.toString(value);
	}

	/** Rounded to so many significant digits, for showing intermediate results. */
	public static String rounded(double value, int digits) {
		return Double.isFinite(value) ? trimmed(BigDecimal.valueOf(value).round(new MathContext(digits)))
				: Double.toString(value);
	}

	private static String trimmed(BigDecimal value) {
		return (value.signum() == 0) ? "0" : value.stripTrailingZeros().toPlainString();
	}

}
