package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.domain.points.Score;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.ScoredTree;
import org.jspecify.annotations.Nullable;

/**
 * What is asked of a standing.
 *
 * @param day the day, or null for today
 * @param knownAt the instant up to which is known, or null for now
 * @param after where the page before this one ended, or null for the first
 * @param limit how many trees at most
 */
public record StandingQuestion(@Nullable LocalDate day, @Nullable Instant knownAt, @Nullable After after, int limit) {

	/**
	 * The last tree of a page.
	 */
	public record After(int position, int rank, BigDecimal points, UUID tree, BigDecimal leaderPoints) {

		/**
		 * As far as the order of a ranking goes.
		 */
		ScoredTree last() {
			LocalDate any = Rulebook.BEGINNING;
			return new ScoredTree(this.tree, this.tree, new Score(ScoreRows.points(this.points), 0), any, any, null,
					false);
		}

	}

}
