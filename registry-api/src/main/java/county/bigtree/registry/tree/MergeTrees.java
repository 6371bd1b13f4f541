package county.bigtree.registry.tree;

import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Two entries that are one tree: the one is kept, with all that is known of both; the
 * other's address leads to it.
 */
@Service
public class MergeTrees {

	private final TreeDecisions decisions;

	private final TreeDirectory trees;

	private final CountyLine line;

	private final JdbcClient jdbc;

	MergeTrees(TreeDecisions decisions, TreeDirectory trees, CountyLine line, JdbcClient jdbc) {
		this.line = line;
		this.decisions = decisions;
		this.trees = trees;
		this.jdbc = jdbc;
	}

	/**
	 * Merges a tree into another, of whose counties the actor must be coordinator.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void merge(Actor actor, String idOrTag, String into, String reason, LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.decisions.get(actor, idOrTag);
		TreeDirectory.KnownTree kept = kept(actor, into);
		if (kept.id().equals(tree.id())) {
			throw Problem.invalid("#/into", "same", "must be another tree than the one that is merged");
		}
		Change change = this.decisions.open(tree, unchanged, kept.county());
		if (!this.trees.get(kept.id()).equals(kept)) {
			throw Problem.of(ProblemType.CONFLICT, "The tree that is to be kept has changed. Look at it again.");
		}
		this.line.requireMayCross(tree.id(), tree.county(), kept.county(), change.today(kept.county()));
		this.decisions.append(change, FactTable.MERGE, actor, reason, "id", Uuid7.next(), "tree", tree.id(),
				"into_tree", kept.id());
		this.decisions.close(change, "merged", actor, List.of(tree.id(), kept.id()), TitleReason.MERGED);
	}

	/**
	 * Takes a merge back: there are two trees again, each with what was filed for it.
	 * @param unchanged told the merged tree's revision under the lock; refuses a stale
	 * one
	 */
	@Transactional
	public void revoke(Actor actor, String idOrTag, String reason, LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.decisions.get(actor, idOrTag);
		Change change = this.decisions.openMerged(tree, unchanged);
		Merge merge = this.jdbc.sql("""
				select id, into_tree from merge m where tree = ?
				  and not exists (select from merge_revocation where merge = m.id)""")
			.param(tree.id())
			.query(Merge.class)
			.optional()
			.orElseThrow(() -> Problem.of(ProblemType.CONFLICT, "This tree is not merged into another."));
		this.decisions.append(change, FactTable.MERGE_REVOCATION, actor, reason, "merge", merge.id());
		this.decisions.close(change, "merge-revoked", actor, List.of(tree.id(), merge.intoTree()), TitleReason.MERGED);
	}

	private TreeDirectory.KnownTree kept(Actor actor, String into) {
		TreeDirectory.KnownTree kept = this.trees.find(into)
			.orElseThrow(() -> Problem.invalid("#/into", "unknown", "no tree has this id or tag"));
		if (!actor.isCoordinatorOf(kept.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of both counties may merge trees of two.");
		}
		if (kept.merged()) {
			throw Problem.invalid("#/into", "merged", "is itself merged into " + this.trees.get(kept.kept()).tag());
		}
		return kept;
	}

	private record Merge(UUID id, UUID intoTree) {
	}

}
