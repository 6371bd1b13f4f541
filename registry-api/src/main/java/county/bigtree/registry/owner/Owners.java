package county.bigtree.registry.owner;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.opening.Opened;
import county.bigtree.registry.opening.Openings;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The owners of trees, for the coordinators of the county where each stands. Reading
 * their names and contacts is noted.
 */
@Service
public class Owners {

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final Journal journal;

	private final Records records;

	Owners(TreeDirectory trees, ChangeAtTree changes, Journal journal, Records records) {
		this.trees = trees;
		this.changes = changes;
		this.journal = journal;
		this.records = records;
	}

	/**
	 * Records an owner of a tree and answers the id.
	 */
	@Transactional
	public UUID add(Actor actor, String idOrTag, OwnerBody body) {
		TreeDirectory.KnownTree tree = coordinated(actor, idOrTag);
		if (!body.names()) {
			throw Problem.invalid("#/name", "missing", "give a name or a person");
		}
		Change change = this.changes.open(tree);
		UUID owner = this.records.record().owner(change, tree.id(), body, "#");
		this.journal.close(change, "owner-recorded", actor.id());
		return owner;
	}

	/**
	 * Records what an owner says.
	 */
	@Transactional
	public void say(Actor actor, UUID id, ConsentBody body) {
		TreeDirectory.KnownTree tree = treeOf(actor, present(id));
		Change change = this.changes.openAnyhow(tree);
		requirePresent(present(id));
		this.records.record().said(change, id, body, actor.id());
		this.journal.close(change, "consent-recorded", actor.id());
	}

	/**
	 * Records that somebody owns the tree no more.
	 */
	@Transactional
	public void end(Actor actor, UUID id, String reason) {
		TreeDirectory.KnownTree tree = treeOf(actor, present(id));
		Change change = this.changes.openAnyhow(tree);
		requirePresent(present(id));
		this.records.record().ended(change, id, actor.id(), reason);
		this.journal.close(change, "owner-ended", actor.id());
	}

	/**
	 * The owners of a tree.
	 */
	@Transactional
	public List<Owner> of(Actor actor, String idOrTag) {
		TreeDirectory.KnownTree tree = coordinated(actor, idOrTag);
		this.records.openings().note(actor, tree.county(), tree.id(), Opened.OWNERS, null);
		return this.records.read().of(tree.id());
	}

	/**
	 * An owner.
	 */
	@Transactional
	public Owner get(Actor actor, UUID id) {
		Owner owner = present(id);
		TreeDirectory.KnownTree tree = treeOf(actor, owner);
		this.records.openings().note(actor, tree.county(), tree.id(), Opened.OWNERS, id);
		return owner;
	}

	private Owner present(UUID id) {
		return this.records.read().find(id).orElseThrow(Owners::unknown);
	}

	private TreeDirectory.KnownTree treeOf(Actor actor, Owner owner) {
		TreeDirectory.KnownTree tree = this.trees.get(owner.tree());
		if (!actor.isCoordinatorOf(tree.county())) {
			throw unknown();
		}
		return tree;
	}

	private static void requirePresent(Owner owner) {
		if (owner.endedAt() != null) {
			throw Problem.of(ProblemType.CONFLICT, "They own the tree no more.");
		}
	}

	private static Problem unknown() {
		return Problem.notFound("No owner has this id.");
	}

	private TreeDirectory.KnownTree coordinated(Actor actor, String idOrTag) {
		TreeDirectory.KnownTree tree = this.trees.get(idOrTag);
		if (!actor.isCoordinatorOf(tree.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Owners are for the coordinators of the county.");
		}
		return tree;
	}

	/**
	 * What reads and writes, and notes who read.
	 */
	@org.springframework.stereotype.Component
	record Records(ReadOwners read, RecordOwner record, Openings openings) {
	}

}
