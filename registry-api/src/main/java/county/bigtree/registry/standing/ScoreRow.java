package county.bigtree.registry.standing;

import java.time.LocalDate;

import county.bigtree.domain.standing.ScoreSpan;
import county.bigtree.domain.standing.ScoredTree;

/**
 * A recorded score span that is not withdrawn.
 *
 * @param id its row
 * @param book the book in which it stands
 * @param span the span
 */
record ScoreRow(long id, BookKey book, ScoreSpan span) {

	ScoredTree scored() {
		return this.span.scored();
	}

	LocalDate from() {
		return this.span.from();
	}

	boolean open() {
		return this.span.until() == null;
	}

}
