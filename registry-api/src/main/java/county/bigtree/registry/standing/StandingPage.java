package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.standing.Lead;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import org.jspecify.annotations.Nullable;

/**
 * A page of a species' ranking in a county.
 *
 * @param asOf the day and the instant asked about
 * @param recordedThrough the last change that the answer knows
 * @param rulebook the day from which the rules applied hold
 * @param speciesEligible whether those rules let trees of the species hold titles
 * @param total how many trees are ranked
 * @param items the trees of this page
 * @param more whether trees follow
 */
public record StandingPage(AsOf asOf, Instant recordedThrough, LocalDate rulebook, boolean speciesEligible, int total,
		List<Item> items, boolean more) {

	/**
	 * A ranked tree.
	 *
	 * @param position its place in the list, counted from 1 without regard to ties
	 * @param behindLeader points behind the first of the list
	 * @param leadsAll the probability that it is truly larger than every other current
	 * tree, for the first current tree of the ranking, if there are others
	 * @param since when its title was recognised, if it holds one and that is known
	 */
	public record Item(int position, int rank, ScoredTree scored, Figures figures, @Nullable Title title,
			@Nullable Instant since, boolean stale, BigDecimal behindLeader, @Nullable Lead lead,
			@Nullable Double leadsAll) {
	}

	/**
	 * A tree's tag and the figures behind its score.
	 *
	 * @param tag null where it is not listed today, at an owner's wish
	 * @param measured the measuring day as exactly as it is known
	 * @param heightMeasuredOn the day of the height where it was carried from an earlier
	 * visit
	 * @param crownMeasuredOn that of the crown spread
	 */
	public record Figures(@Nullable String tag, KnownDay measured, BigDecimal girthInches, BigDecimal heightFeet,
			@Nullable LocalDate heightMeasuredOn, BigDecimal crownSpreadFeet, @Nullable LocalDate crownMeasuredOn) {

		/** Whether the tree may be shown as itself. */
		public boolean listed() {
			return this.tag != null;
		}

	}

}
