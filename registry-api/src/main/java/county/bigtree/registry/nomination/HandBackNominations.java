package county.bigtree.registry.nomination;

import java.util.List;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.review.Mover;
import county.bigtree.domain.review.NominationMove;
import county.bigtree.domain.review.NominationMoves;
import county.bigtree.domain.review.NominationStatus;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.AssignedWork;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Hands back the nominations that are under review by someone who leaves.
 */
@Component
class HandBackNominations implements AssignedWork {

	private final JdbcClient jdbc;

	private final Journal journal;

	private final NominationBook book;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	HandBackNominations(JdbcClient jdbc, Journal journal, NominationBook book, TreeDirectory trees,
			ChangeAtTree changes) {
		this.jdbc = jdbc;
		this.journal = journal;
		this.book = book;
		this.trees = trees;
		this.changes = changes;
	}

	@Override
	public void handBack(Leaving leaving) {
		assigned(leaving).forEach((nomination) -> handBack(nomination, leaving));
	}

	private List<UUID> assigned(Leaving leaving) {
		return this.jdbc
			.sql("""
					select n.id from nomination n
					join lateral (select stands_in from location where tree = n.tree order by recorded_at desc limit 1) l on true
					where n.verifier = :person and n.status = 'under-review'
					  and (cast(:county as text) is null or l.stands_in = :county)
					order by l.stands_in, n.id""")
			.param("person", leaving.person())
			.param("county", leaving.county(), java.sql.Types.VARCHAR)
			.query(UUID.class)
			.list();
	}

	private void handBack(UUID id, Leaving leaving) {
		Change change = this.changes.openAnyhow(this.trees.get(this.book.get(id).tree()));
		NominationBook.Nomination nomination = this.book.get(id);
		if (nomination.state() != NominationStatus.UNDER_REVIEW || !leaving.person().equals(nomination.verifier())) {
			throw new org.springframework.dao.ConcurrencyFailureException("The nomination was moved meanwhile");
		}
		NominationStatus to = MoveNomination.decided(
				NominationMoves.decide(nomination.state(), NominationMove.HAND_BACK, Set.of(Mover.ASSIGNED_VERIFIER)));
		this.book.move(change, nomination, NominationMove.HAND_BACK.code(), to, leaving.by(), null, leaving.reason());
		this.journal.close(change, "nomination-" + NominationMove.HAND_BACK.code(), leaving.by());
	}

}
