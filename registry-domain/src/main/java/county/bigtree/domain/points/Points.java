package county.bigtree.domain.points;

import java.math.BigDecimal;
import java.math.RoundingMode;

import county.bigtree.domain.quantity.Figures;

/**
 * A tree's points: girth in inches, plus height in feet, plus a quarter of the mean crown
 * spread in feet (common practice, no single published source). Kept and ranked in exact
 * hundredths, shown as a whole number; both roundings are half up. Only inches and feet
 * give points: the sum changes with its units.
 *
 * @param hundredths of a point, more than zero
 */
public record Points(int hundredths) implements Comparable<Points> {

	/** Digits kept of the unrounded sum, to drop the noise of binary fractions. */
	private static final int NOISE_FREE_DIGITS = 9;

	public Points {
		Figures.positive("points", hundredths);
	}

	/**
	 * Rounds once, half up, to a hundredth. Missing figures give no points: each must be
	 * greater than zero.
	 */
	public static Points of(double girthInches, double heightFeet, double crownSpreadFeet) {
		BigDecimal exact = unrounded(girthInches, heightFeet, crownSpreadFeet);
		return new Points(exact.setScale(2, RoundingMode.HALF_UP).unscaledValue().intValueExact());
	}

	public static Points ofHundredths(int hundredths) {
		return new Points(hundredths);
	}

	/** The sum before rounding, decimal as the figures are written: 295.725. */
	public static BigDecimal unrounded(double girthInches, double heightFeet, double crownSpreadFeet) {
		BigDecimal girth = BigDecimal.valueOf(Figures.positive("girthInches", girthInches));
		BigDecimal height = BigDecimal.valueOf(Figures.positive("heightFeet", heightFeet));
		BigDecimal spread = BigDecimal.valueOf(Figures.positive("crownSpreadFeet", crownSpreadFeet));
		return girth.add(height)
			.add(spread.divide(BigDecimal.valueOf(4)))
			.setScale(NOISE_FREE_DIGITS, RoundingMode.HALF_EVEN);
	}

	public BigDecimal toBigDecimal() {
		return BigDecimal.valueOf(this.hundredths, 2);
	}

	/** The whole number shown, half up: 195.50 is 196. */
	public int rounded() {
		return toBigDecimal().setScale(0, RoundingMode.HALF_UP).intValueExact();
	}

	@Override
	public int compareTo(Points other) {
		return Integer.compare(this.hundredths, other.hundredths);
	}

	@Override
	public String toString() {
		return toBigDecimal().toPlainString();
	}

}
