package county.bigtree.domain.standing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.standing.TreeFacts.Found;
import county.bigtree.domain.standing.TreeFacts.Measured;
import org.jspecify.annotations.Nullable;

/**
 * The score of a visit: of its own figures or, where it lacks a height or a crown spread
 * and the rules let it, with the latest earlier figure of that kind. A figure from before
 * a damage does not stand in for one after it.
 *
 * @param score its standard uncertainty to 0.0001 points, as it is kept, where a figure
 * was carried
 * @param from where the figures come from that are not its own
 * @param methods by which the figures were taken, its own or not
 */
record CombinedScore(Score score, CarriedFrom from, FigureMethods methods) {

	private static final int DECIMALS = 4;

	/**
	 * The score of the visit.
	 * @param earlier what counts besides, up to the visit itself, in order
	 * @param conditions the conditions found of the tree
	 */
	static Optional<CombinedScore> of(Measured visit, List<Measured> earlier, List<Found> conditions) {
		Score own = visit.figures().score();
		if (own != null) {
			return Optional.of(new CombinedScore(own, CarriedFrom.NOTHING, visit.figures().methods()));
		}
		CarryForward carries = visit.figures().carries();
		Estimate girth = visit.figures().girthInches();
		Carried height = carried(visit, VisitFigures::heightFeet, carries.heightYears(), earlier, conditions);
		Carried crown = carried(visit, VisitFigures::crownSpreadFeet, carries.crownYears(), earlier, conditions);
		if (girth == null || height == null || crown == null) {
			return Optional.empty();
		}
		return Optional.of(new CombinedScore(kept(Score.of(girth, height.figure(), crown.figure())),
				new CarriedFrom(height.from(), crown.from()), new FigureMethods(visit.figures().methods().girth(),
						height.methods().height(), crown.methods().crown())));
	}

	private static @Nullable Carried carried(Measured visit, Function<VisitFigures, @Nullable Estimate> kind, int years,
			List<Measured> earlier, List<Found> conditions) {
		Estimate own = kind.apply(visit.figures());
		if (own != null) {
			return new Carried(own, null, visit.figures().methods());
		}
		Measured last = earlier.stream()
			.filter((measured) -> kind.apply(measured.figures()) != null)
			.reduce((one, other) -> other)
			.orElse(null);
		Estimate figure = (last != null) ? kind.apply(last.figures()) : null;
		if (last == null || figure == null || !CarryForward.within(years, last.measuredOn(), visit.measuredOn())
				|| damagedBetween(last, visit, conditions)) {
			return null;
		}
		return new Carried(CarryForward.widened(figure, last.measuredOn(), visit.measuredOn()), last.measurement(),
				last.figures().methods());
	}

	private static boolean damagedBetween(Measured earlier, Measured visit, List<Found> conditions) {
		return conditions.stream()
			.filter((found) -> found.condition() == Condition.DAMAGED)
			.map(Found::holdsFrom)
			.anyMatch((lost) -> lost.isAfter(earlier.measuredOn()) && !lost.isAfter(visit.measuredOn()));
	}

	private static Score kept(Score score) {
		BigDecimal uncertainty = BigDecimal.valueOf(score.standardUncertainty());
		return new Score(score.points(), uncertainty.setScale(DECIMALS, RoundingMode.HALF_UP).doubleValue());
	}

	private record Carried(Estimate figure, @Nullable UUID from, FigureMethods methods) {
	}

}
