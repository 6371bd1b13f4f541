package county.bigtree.domain.standing;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.rulebook.WhenStale;

/**
 * Whether a tree's score takes part in the contest for a title on a day, and when the
 * passing of time will next change that.
 *
 * <p>
 * To contend is less than to hold: under {@link WhenStale#VACANT} a stale tree contends,
 * since it can keep others from the title, but holds none. Figures taken by a method that
 * takes no title don't contend: what can't win a title can't cost anybody one.
 */
public final class Contention {

	private final Rulebook rulebook;

	public Contention(Rulebook rulebook) {
		this.rulebook = rulebook;
	}

	/**
	 * Whether the measurement is too old on the day.
	 */
	public boolean stale(ScoredTree tree, LocalDate day) {
		return day.isAfter(currentUntil(tree));
	}

	/**
	 * Whether the tree takes part in the contest for the title on the day.
	 */
	public boolean contends(ScoredTree tree, LocalDate day) {
		return this.rulebook.title().allow(tree.methods()) && withinGrace(tree, day)
				&& switch (this.rulebook.whenStale()) {
					case KEEPS -> !stale(tree, day) || !day.isAfter(seenUntil(tree));
					case VACANT -> true;
					case PASSES -> !stale(tree, day);
				};
	}

	/**
	 * The first day after the given one on which time alone changes whether the tree is
	 * current, within its days of grace after damage, or recently enough seen.
	 */
	public Optional<LocalDate> turnsOn(ScoredTree tree, LocalDate after) {
		Stream<LocalDate> lastDays = Stream
			.of(Optional.of(currentUntil(tree)), Optional.of(seenUntil(tree)), graceUntil(tree))
			.flatMap(Optional::stream);
		return lastDays.map((last) -> last.plusDays(1)).filter((turn) -> turn.isAfter(after)).min(LocalDate::compareTo);
	}

	/**
	 * Whether a damaged tree is within the days in which it may still hold a title; true
	 * for a tree that has lost nothing.
	 */
	public boolean withinGrace(ScoredTree tree, LocalDate day) {
		return graceUntil(tree).map((last) -> !day.isAfter(last)).orElse(true);
	}

	private LocalDate currentUntil(ScoredTree tree) {
		return this.rulebook.currentUntil(tree.measuredOn(), tree.carriedOver());
	}

	private LocalDate seenUntil(ScoredTree tree) {
		return tree.seenOn().plusYears(this.rulebook.sightingYears());
	}

	private Optional<LocalDate> graceUntil(ScoredTree tree) {
		return Optional.ofNullable(tree.lostOn()).map(this.rulebook::remeasureUntil);
	}

}
