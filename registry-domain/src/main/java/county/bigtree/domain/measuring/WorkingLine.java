package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.Figures;

/**
 * One step of the arithmetic.
 *
 * @param formula in symbols: {@code H = X (tan a - tan b)}
 * @param numbers the same with the numbers put in
 * @param value what comes out, unrounded
 * @param unit of the value, empty for a number without one
 */
public record WorkingLine(String formula, String numbers, double value, String unit) {

	private static final int DIGITS = 6;

	/** The value as written on the board, to six significant digits, with its unit. */
	public String result() {
		String number = Figures.rounded(this.value, DIGITS);
		return this.unit.isEmpty() ? number : number + " " + this.unit;
	}

}
