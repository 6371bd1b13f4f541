package county.bigtree.domain.review;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * How filed figures stand to those of a check, figure by figure, for those that both
 * have.
 *
 * @param figures in the order girth, height, crown
 */
public record Agreement(List<Figure> figures) {

	/** What binary fractions may add to a difference that lies exactly on the line. */
	private static final double NOISE = 1e-9;

	public Agreement {
		figures = List.copyOf(figures);
	}

	public static Agreement between(Reduced filed, Reduced checked, Tolerances tolerances) {
		List<Figure> figures = new ArrayList<>();
		compare(figures, Kind.GIRTH, filed.girthInches(), checked.girthInches(), tolerances::girthInches);
		compare(figures, Kind.HEIGHT, filed.heightFeet(), checked.heightFeet(), tolerances::heightFeet);
		compare(figures, Kind.CROWN, filed.crownSpreadFeet(), checked.crownSpreadFeet(), tolerances::spreadFeet);
		return new Agreement(figures);
	}

	/** Whether no figure lies outside its tolerance; so also where none was compared. */
	public boolean holds() {
		return this.figures.stream().allMatch(Figure::within);
	}

	public List<Figure> outside() {
		return this.figures.stream().filter((figure) -> !figure.within()).toList();
	}

	private static void compare(List<Figure> figures, Kind kind, @Nullable Estimate filed, @Nullable Estimate checked,
			DoubleUnaryOperator tolerance) {
		if (filed != null && checked != null) {
			figures.add(new Figure(kind, filed.value(), checked.value(), tolerance.applyAsDouble(checked.value())));
		}
	}

	/**
	 * One figure of both: inches for a girth, feet for the others.
	 *
	 * @param tolerance how far apart they may lie, inclusive
	 */
	public record Figure(Kind kind, double filed, double checked, double tolerance) {

		public double difference() {
			return this.filed - this.checked;
		}

		public boolean within() {
			return Math.abs(difference()) <= this.tolerance + NOISE;
		}

	}

}
