package county.bigtree.domain.review;

import java.util.ArrayList;
import java.util.List;

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
public record Agreement(List<CheckedFigure> figures) {

	/** Of a check that measured nothing. */
	public static final Agreement NOTHING_COMPARED = new Agreement(List.of());

	public Agreement {
		figures = List.copyOf(figures);
	}

	public static Agreement between(Reduced filed, Reduced checked, Tolerances tolerances, VisitsApart apart) {
		List<CheckedFigure> figures = new ArrayList<>();
		compare(figures, Kind.GIRTH, filed.girthInches(), checked.girthInches(), tolerances, apart);
		compare(figures, Kind.HEIGHT, filed.heightFeet(), checked.heightFeet(), tolerances, apart);
		compare(figures, Kind.CROWN, filed.crownSpreadFeet(), checked.crownSpreadFeet(), tolerances, apart);
		return new Agreement(figures);
	}

	/** Whether no figure lies outside its tolerance; so also where none was compared. */
	public boolean holds() {
		return this.figures.stream().allMatch(CheckedFigure::withinTolerance);
	}

	public List<CheckedFigure> outside() {
		return this.figures.stream().filter((figure) -> !figure.withinTolerance()).toList();
	}

	private static void compare(List<CheckedFigure> figures, Kind kind, @Nullable Estimate filed,
			@Nullable Estimate checked, Tolerances tolerances, VisitsApart apart) {
		if (filed != null && checked != null) {
			figures.add(CheckedFigure.of(kind, filed, checked, tolerances, apart.growth(kind)));
		}
	}

}
