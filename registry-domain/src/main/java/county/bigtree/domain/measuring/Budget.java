package county.bigtree.domain.measuring;

import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Figures;

/**
 * What each entry adds to the uncertainty of a figure: its sensitivity (the partial
 * derivative of the formula) times its own standard uncertainty, taken as independent.
 */
record Budget(List<Term> terms) {

	private static final int DIGITS = 4;

	static Budget of(Term... terms) {
		return new Budget(List.of(terms));
	}

	static Term term(String symbol, double sensitivity, double standardUncertainty) {
		return new Term(symbol, sensitivity, standardUncertainty);
	}

	double combined() {
		return Uncertainty.combined(this.terms.stream().mapToDouble(Term::contribution).toArray());
	}

	WorkingLine line(String figure, String unit) {
		String formula = this.terms.stream().map((term) -> term.formula(figure)).collect(Collectors.joining(" + "));
		String numbers = this.terms.stream().map(Term::numbers).collect(Collectors.joining(" + "));
		return new WorkingLine("u(" + figure + ") = √(" + formula + ")", "√(" + numbers + ")", combined(), unit);
	}

	/**
	 * One entry's part.
	 *
	 * @param symbol the entry's, as the formula writes it
	 * @param sensitivity of the figure to the entry
	 * @param standardUncertainty of the entry, angles in radians
	 */
	record Term(String symbol, double sensitivity, double standardUncertainty) {

		double contribution() {
			return this.sensitivity * this.standardUncertainty;
		}

		String formula(String figure) {
			return "(∂" + figure + "/∂" + this.symbol + " u(" + this.symbol + "))²";
		}

		String numbers() {
			return "(" + Figures.rounded(this.sensitivity, DIGITS) + " × "
					+ Figures.rounded(this.standardUncertainty, DIGITS) + ")²";
		}

	}

}
