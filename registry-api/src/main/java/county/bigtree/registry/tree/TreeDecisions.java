package county.bigtree.registry.tree;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.standing.Standings;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * What all decisions of coordinators on trees have in common: whose they are, on what
 * they were made, and that the standings follow.
 */
@Component
class TreeDecisions {

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final Writing writing;

	private final Standings standings;

	TreeDecisions(TreeDirectory trees, ChangeAtTree changes, Writing writing, Standings standings) {
		this.trees = trees;
		this.changes = changes;
		this.writing = writing;
		this.standings = standings;
	}

	/**
	 * The tree, of whose county the actor must be coordinator.
	 */
	TreeDirectory.KnownTree get(Actor actor, String idOrTag) {
		TreeDirectory.KnownTree tree = this.trees.get(idOrTag);
		if (!actor.isCoordinatorOf(tree.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of the county may decide this.");
		}
		return tree;
	}

	/**
	 * Begins the change.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	Change open(TreeDirectory.KnownTree tree, LongConsumer unchanged, String... otherCounties) {
		Change change = this.changes.open(tree, otherCounties);
		unchanged.accept(this.trees.get(tree.id()).revision());
		return change;
	}

	/**
	 * The same for a tree that is merged into another.
	 */
	Change openMerged(TreeDirectory.KnownTree tree, LongConsumer unchanged) {
		Change change = this.changes.openAnyhow(tree);
		unchanged.accept(this.trees.get(tree.id()).revision());
		return change;
	}

	void append(Change change, FactTable table, @Nullable Object... columnsAndValues) {
		this.writing.facts.append(change, table, columnsAndValues);
	}

	/**
	 * Appends a fact with who decided it and why.
	 */
	void append(Change change, FactTable table, Actor actor, String reason, @Nullable Object... columnsAndValues) {
		List<@Nullable Object> all = new ArrayList<>(java.util.Arrays.asList(columnsAndValues));
		all.add("by_person");
		all.add(actor.id());
		all.add("reason");
		all.add(this.writing.texts.keep(change, reason));
		this.writing.facts.append(change, table, all.toArray());
	}

	@Nullable UUID keep(Change change, @Nullable String words) {
		return this.writing.texts.keep(change, words);
	}

	/**
	 * Lets the standings follow and ends the change.
	 */
	void close(Change change, String kind, Actor actor, Collection<UUID> changed, TitleReason reason) {
		this.standings.refresh(change, changed, reason);
		this.writing.journal.close(change, kind, actor.id());
	}

	/**
	 * Ends a change after which the standings stay, or have followed already.
	 */
	void close(Change change, String kind, Actor actor) {
		this.writing.journal.close(change, kind, actor.id());
	}

	/**
	 * What writes.
	 */
	@Component
	static class Writing {

		private final Facts facts;

		private final Texts texts;

		private final Journal journal;

		Writing(Facts facts, Texts texts, Journal journal) {
			this.facts = facts;
			this.texts = texts;
			this.journal = journal;
		}

	}

}
