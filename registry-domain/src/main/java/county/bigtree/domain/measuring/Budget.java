package county.bigtree.domain.measuring;

import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Estimate;
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
		return new Term(symbol, sensitivity, standardUncertainty, Double.POSITIVE_INFINITY);
	}

	static Term term(String symbol, double sensitivity, Estimate entry) {
		return new Term(symbol, sensitivity, entry.standardUncertainty(), entry.degreesOfFreedom());
	}

	double combined() {
		double squares = 0;
		for (Term term : this.terms) {
			squares += term.contribution() * term.contribution();
		}
		return Math.sqrt(squares);
	}

	/**
	 * Of the combined uncertainty, by the Welch-Satterthwaite formula (JCGM 100:2008,
	 * G.4.1); infinite unless an entry was repeated.
	 */
	double degreesOfFreedom() {
		double sum = 0;
		for (Term term : this.terms) {
			sum += Math.pow(term.contribution(), 4) / term.degreesOfFreedom;
		}
		return (sum == 0) ? Double.POSITIVE_INFINITY : Math.pow(combined(), 4) / sum;
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
	 * @param degreesOfFreedom of that uncertainty
	 */
	record Term(String symbol, double sensitivity, double standardUncertainty, double degreesOfFreedom) {

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
