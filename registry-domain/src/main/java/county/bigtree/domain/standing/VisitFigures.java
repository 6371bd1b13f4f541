package county.bigtree.domain.standing;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.rulebook.CarryForward;
import org.jspecify.annotations.Nullable;

/**
 * What the readings of one visit come to. A figure not measured is null, and then there
 * is no score of the visit alone.
 *
 * @param score there exactly when all three figures are
 * @param carries for how long earlier figures may stand in for those that it lacks, by
 * the rules of its measuring day as known when it was filed
 * @param methods by which the figures were taken
 */
public record VisitFigures(@Nullable Estimate girthInches, @Nullable Estimate heightFeet,
		@Nullable Estimate crownSpreadFeet, @Nullable Score score, CarryForward carries, FigureMethods methods) {

	public VisitFigures {
		if ((score != null) != (girthInches != null && heightFeet != null && crownSpreadFeet != null)) {
			throw new IllegalArgumentException("A visit has a score exactly when it has all three figures");
		}
	}

}
