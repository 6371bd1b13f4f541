package county.bigtree.domain.standing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

import org.jspecify.annotations.Nullable;

/**
 * The score spans that a tree should have: a pure function of its few facts.
 *
 * <p>
 * On a day the score is that of the latest counting measurement on or before it that
 * gives one, alone or with earlier figures, as long as the condition on that day is one
 * in which the tree stands alive. Spans also part where the tree was seen standing again
 * and where it lost a part, since both decide whether it may hold a title later, and
 * where a stem ruling lets other measurements count than before.
 */
public final class ScoreSpans {

	private final TreeFacts facts;

	private final List<TreeFacts.Measured> counting;

	private final List<TreeFacts.Found> conditions;

	private final List<TreeFacts.Ruled> rulings;

	private ScoreSpans(TreeFacts facts) {
		this.facts = facts;
		this.counting = facts.measurements()
			.stream()
			.filter(TreeFacts.Measured::counts)
			.sorted(TreeFacts.Measured.ORDER)
			.toList();
		this.conditions = facts.conditions()
			.stream()
			.filter((found) -> found.condition().conclusive())
			.sorted(TreeFacts.Found.ORDER)
			.toList();
		this.rulings = facts.rulings().stream().sorted(TreeFacts.Ruled.ORDER).toList();
	}

	/**
	 * The spans in order of their days, none overlapping.
	 */
	public static List<ScoreSpan> of(TreeFacts facts) {
		return facts.onTheBooks() ? new ScoreSpans(facts).spans() : List.of();
	}

	private List<ScoreSpan> spans() {
		List<ScoreSpan> spans = new ArrayList<>();
		ScoredTree open = null;
		LocalDate since = null;
		for (LocalDate day : turningDays()) {
			ScoredTree now = scoredOn(day).orElse(null);
			if (open != null && since != null && !open.equals(now)) {
				spans.add(new ScoreSpan(open, since, day, ended(open, now, day)));
			}
			if (now != null && !now.equals(open)) {
				since = day;
			}
			open = now;
		}
		if (open != null && since != null) {
			spans.add(new ScoreSpan(open, since, null, null));
		}
		return spans;
	}

	private SortedSet<LocalDate> turningDays() {
		SortedSet<LocalDate> days = new TreeSet<>();
		this.counting.forEach((measured) -> days.add(measured.measuredOn()));
		this.conditions.forEach((found) -> {
			days.add(found.holdsFrom());
			days.add(found.observedOn());
		});
		this.rulings.forEach((ruled) -> days.add(ruled.from()));
		return days;
	}

	private Optional<ScoredTree> scoredOn(LocalDate day) {
		if (!conditionOn(day).standing()) {
			return Optional.empty();
		}
		List<TreeFacts.Measured> usable = this.counting.stream()
			.filter((measured) -> !measured.measuredOn().isAfter(day) && allowedOn(measured, day))
			.toList();
		for (int last = usable.size() - 1; last >= 0; last--) {
			TreeFacts.Measured measured = usable.get(last);
			Optional<CombinedScore> score = CombinedScore.of(measured, usable.subList(0, last), this.conditions);
			if (score.isPresent()) {
				return Optional.of(scored(measured, score.get(), day));
			}
		}
		return Optional.empty();
	}

	private ScoredTree scored(TreeFacts.Measured measured, CombinedScore score, LocalDate day) {
		return new ScoredTree(this.facts.tree(), measured.measurement(), score.score(), measured.measuredOn(),
				seenOn(measured, day), lostOn(measured, day), measured.carriedOver(), score.from(), score.methods());
	}

	/**
	 * Whether the measurement was taken as the ruling in force on the day says.
	 */
	private boolean allowedOn(TreeFacts.Measured measured, LocalDate day) {
		return this.rulings.stream()
			.filter((ruled) -> !ruled.from().isAfter(day))
			.reduce((earlier, later) -> later)
			.map((ruled) -> ruled.allows(measured))
			.orElse(true);
	}

	private Condition conditionOn(LocalDate day) {
		return this.conditions.stream()
			.filter((found) -> !found.holdsFrom().isAfter(day))
			.reduce((earlier, later) -> later)
			.map(TreeFacts.Found::condition)
			.orElse(Condition.UPRIGHT);
	}

	private LocalDate seenOn(TreeFacts.Measured latest, LocalDate day) {
		return this.conditions.stream()
			.filter((found) -> found.condition().standing())
			.map(TreeFacts.Found::observedOn)
			.filter((seen) -> seen.isAfter(latest.measuredOn()) && !seen.isAfter(day))
			.max(LocalDate::compareTo)
			.orElse(latest.measuredOn());
	}

	private @Nullable LocalDate lostOn(TreeFacts.Measured latest, LocalDate day) {
		return this.conditions.stream()
			.filter((found) -> found.condition() == Condition.DAMAGED)
			.map(TreeFacts.Found::holdsFrom)
			.filter((lost) -> lost.isAfter(latest.measuredOn()) && !lost.isAfter(day))
			.min(LocalDate::compareTo)
			.orElse(null);
	}

	private ScoreSpan.Ended ended(ScoredTree open, @Nullable ScoredTree now, LocalDate day) {
		if (now == null) {
			return switch (conditionOn(day)) {
				case FALLEN -> ScoreSpan.Ended.FELL;
				case REMOVED -> ScoreSpan.Ended.REMOVED;
				case DEAD -> ScoreSpan.Ended.DIED;
				default -> ScoreSpan.Ended.RULED;
			};
		}
		boolean otherFigures = now.measurement().equals(open.measurement()) && !now.from().equals(open.from());
		if (otherFigures || now.measuredOn().isBefore(open.measuredOn())) {
			return ScoreSpan.Ended.RULED;
		}
		if (!now.measurement().equals(open.measurement())) {
			return ScoreSpan.Ended.REMEASURED;
		}
		return (now.lostOn() != null && open.lostOn() == null) ? ScoreSpan.Ended.DAMAGED : ScoreSpan.Ended.SEEN;
	}

}
