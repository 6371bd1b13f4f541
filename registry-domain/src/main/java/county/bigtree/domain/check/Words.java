package county.bigtree.domain.check;

import county.bigtree.domain.quantity.Figures;

/**
 * Figures as the sentences of the checks write them: three significant digits.
 */
final class Words {

	private static final int DIGITS = 3;

	private static final double WHOLE_FROM = 100;

	private Words() {
	}

	static String feet(double feet) {
		return number(feet) + " ft";
	}

	static String inches(double inches) {
		return number(inches) + " in";
	}

	static String number(double value) {
		return (Math.abs(value) >= WHOLE_FROM) ? String.valueOf(Math.round(value)) : Figures.rounded(value, DIGITS);
	}

}
