package county.bigtree.registry.measurement;

import java.util.UUID;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Files a remeasurement of a tree on the books. It counts once signed off.
 */
@Service
public class FileRemeasurement {

	private final Journal journal;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final RecordMeasurement record;

	FileRemeasurement(Journal journal, TreeDirectory trees, ChangeAtTree changes, RecordMeasurement record) {
		this.journal = journal;
		this.trees = trees;
		this.changes = changes;
		this.record = record;
	}

	/**
	 * Files it and answers its id.
	 */
	@Transactional
	public UUID file(Actor actor, String idOrTag, MeasurementBody body) {
		TreeDirectory.KnownTree tree = this.trees.getShown(idOrTag, actor);
		if (!actor.isVolunteerIn(tree.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only volunteers of the county may file a remeasurement.");
		}
		Change change = this.changes.open(tree);
		UUID measurement = this.record.record(change, tree.id(), body, actor.id(), Basis.FILED, "#");
		this.journal.close(change, "remeasured", actor.id());
		return measurement;
	}

}
