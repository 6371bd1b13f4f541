package county.bigtree.registry.tree;

import java.util.UUID;
import java.util.function.LongConsumer;

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
 * Two entries that seem to be one tree and are two: they are no longer proposed to be
 * merged, until one of them is found to stand elsewhere. Neither is changed by it.
 */
@Service
public class TellApart {

	private final TreeDecisions decisions;

	private final TreeDirectory trees;

	private final JdbcClient jdbc;

	TellApart(TreeDecisions decisions, TreeDirectory trees, JdbcClient jdbc) {
		this.decisions = decisions;
		this.trees = trees;
		this.jdbc = jdbc;
	}

	/**
	 * Tells a tree apart from another of its county.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void tell(Actor actor, String idOrTag, String from, String reason, LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.decisions.get(actor, idOrTag);
		TreeDirectory.KnownTree other = other(tree, from);
		Change change = this.decisions.open(tree, unchanged);
		if (!this.trees.get(other.id()).equals(other)) {
			throw Problem.of(ProblemType.CONFLICT, "The other tree has changed. Look at it again.");
		}
		if (areTold(tree.id(), other.id())) {
			throw Problem.of(ProblemType.CONFLICT, "These two are told apart already.");
		}
		this.decisions.append(change, FactTable.DISTINCTION, actor, reason, "id", Uuid7.next(), "tree", tree.id(),
				"other_tree", other.id());
		this.decisions.close(change, "told-apart", actor);
	}

	private TreeDirectory.KnownTree other(TreeDirectory.KnownTree tree, String from) {
		TreeDirectory.KnownTree other = this.trees.find(from)
			.filter((one) -> one.county().equals(tree.county()))
			.orElseThrow(() -> Problem.invalid("#/from", "unknown", "no tree of the county has this id or tag"));
		if (other.id().equals(tree.id())) {
			throw Problem.invalid("#/from", "same", "must be another tree");
		}
		if (other.merged()) {
			throw Problem.invalid("#/from", "merged", "is itself merged into " + this.trees.get(other.kept()).tag());
		}
		return other;
	}

	private boolean areTold(UUID tree, UUID other) {
		return this.jdbc.sql("""
				select exists (select from distinction where (tree = :tree and other_tree = :other
				  or tree = :other and other_tree = :tree) and distinction_holds(id))""")
			.param("tree", tree)
			.param("other", other)
			.query(Boolean.class)
			.single();
	}

}
