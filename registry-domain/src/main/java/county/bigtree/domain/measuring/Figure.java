package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.measuring.InstrumentDefaults.Floor;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * The last step of every method: the figure with the uncertainty its budget gives, not
 * less than the method's floor.
 *
 * @param symbol of the figure: C, H or W
 * @param unit of the figure
 * @param value by the method's formula
 * @param budget by the formula's partial derivatives
 * @param floor least uncertainty of the method, in the figure's unit, or 0
 */
record Figure(String symbol, LengthUnit unit, double value, Budget budget, double floor) {

	/** Beyond this the entries can't be of a tree, whatever they are one by one. */
	private static final double MOST = LengthUnit.M.to(LengthUnit.IN, Length.MOST_METRES);

	static Figure girth(double inches, Budget budget) {
		return new Figure("C", LengthUnit.IN, inches, budget, 0);
	}

	static Figure height(double feet, Budget budget) {
		return new Figure("H", LengthUnit.FT, feet, budget, 0);
	}

	static Figure spread(double feet, Budget budget) {
		return new Figure("W", LengthUnit.FT, feet, budget, 0);
	}

	/** The floor holds unless all uncertainties are the measurer's own. */
	Figure notBelow(Floor least, boolean allStated) {
		return allStated ? this : new Figure(this.symbol, this.unit, this.value, this.budget, least.of(this.value));
	}

	Estimate estimate() {
		if (!(this.value > 0 && this.value <= MOST)) {
			throw new InvalidReadingException("", Flaw.OUT_OF_RANGE, "must come to more than 0 and at most "
					+ Length.MOST_METRES + " m but came to " + Figures.plain(this.value) + " " + this.unit.code());
		}
		double combined = this.budget.combined();
		return (combined < this.floor) ? new Estimate(this.value, this.floor)
				: new Estimate(this.value, combined, this.budget.degreesOfFreedom());
	}

	/** As propagated, whatever the method's least. */
	Estimate budgeted() {
		return new Figure(this.symbol, this.unit, this.value, this.budget, 0).estimate();
	}

	/** The step from the entries to the figure, and the steps to its uncertainty. */
	List<WorkingLine> lines(String formula, String numbers) {
		WorkingLine result = new WorkingLine(this.symbol + " = " + formula, numbers, this.value, this.unit.code());
		WorkingLine uncertainty = this.budget.line(this.symbol, this.unit.code());
		if (this.floor <= uncertainty.value()) {
			return List.of(result, uncertainty);
		}
		String u = "u(" + this.symbol + ")";
		WorkingLine raised = new WorkingLine(u + " is not taken below the method's least",
				"max(" + uncertainty.result() + ", " + Figures.rounded(this.floor, 4) + " " + this.unit.code() + ")",
				this.floor, this.unit.code());
		return List.of(result, uncertainty, raised);
	}

	static Estimate radians(Angle angle) {
		return angle.estimateRadians(InstrumentDefaults.ANGLE_DEGREES, InstrumentDefaults.ANGLE_PERCENT);
	}

}
