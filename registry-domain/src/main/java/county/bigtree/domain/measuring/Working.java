package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.AngleUnit;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * The lines of arithmetic of one reading, as they are written down.
 */
final class Working {

	private static final int DIGITS = 6;

	private final List<WorkingLine> lines = new ArrayList<>();

	/** Adds the step into the unit of the formula, unless the entry is in it already. */
	Working converted(String symbol, Length entered, LengthUnit unit) {
		if (!(entered instanceof Length.Single single && single.unit() == unit)) {
			this.lines
				.add(new WorkingLine(symbol + " in " + unit.code(), entered.text(), entered.in(unit), unit.code()));
		}
		return this;
	}

	/** Adds the mean of an angle that was sighted several times. */
	Working sighted(String symbol, Angle angle) {
		if (!angle.sights().isEmpty()) {
			String unit = (angle.unit() == AngleUnit.DEG) ? "deg" : "%";
			String sights = angle.sights().stream().map(Figures::plain).collect(Collectors.joining(", "));
			this.lines.add(new WorkingLine(symbol + " = mean of the sights", "mean of (" + sights + ") " + unit,
					angle.value(), unit));
		}
		return this;
	}

	Working line(String formula, String numbers, double value, LengthUnit unit) {
		this.lines.add(new WorkingLine(formula, numbers, value, unit.code()));
		return this;
	}

	/** A number without a unit. */
	Working ratio(String formula, String numbers, double value) {
		this.lines.add(new WorkingLine(formula, numbers, value, ""));
		return this;
	}

	List<WorkingLine> then(List<WorkingLine> last) {
		this.lines.addAll(last);
		return List.copyOf(this.lines);
	}

	static String number(double value) {
		return Figures.rounded(value, DIGITS);
	}

	static String feet(Length length) {
		return number(length.feet());
	}

	static String inches(Length length) {
		return number(length.inches());
	}

	/** The tangent as written: of an angle in degrees, or a percentage itself. */
	static String tangent(Angle angle) {
		return (angle.unit() == AngleUnit.PCT) ? "(" + angle.text() + ")" : "tan(" + angle.text() + ")";
	}

	static String degrees(Angle angle) {
		return number(angle.degrees()) + " deg";
	}

}
