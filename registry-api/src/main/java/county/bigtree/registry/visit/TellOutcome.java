package county.bigtree.registry.visit;

import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Tells, once, what came of a visit. A tree that was seen gets a sighting, one that was
 * not found a report of that.
 */
@Service
public class TellOutcome {

	private final Visits visits;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final CameOfIt cameOfIt;

	private final VisitRecorder recorder;

	TellOutcome(Visits visits, TreeDirectory trees, ChangeAtTree changes, CameOfIt cameOfIt, VisitRecorder recorder) {
		this.visits = visits;
		this.trees = trees;
		this.changes = changes;
		this.cameOfIt = cameOfIt;
		this.recorder = recorder;
	}

	/**
	 * Records the outcome and answers the visit as it then is: a guest may not read it
	 * again.
	 * @param unchanged told the visit's revision under the lock; refuses a stale one
	 */
	@Transactional
	public Visits.Visit tell(Actor actor, UUID id, OutcomeBody told, LongConsumer unchanged) {
		VisitOutcome outcome = VisitOutcome.find(told.outcome())
			.orElseThrow(() -> Problem.invalid("#/outcome", "unknown",
					"must be measured, seen, not-found, refused, no-answer, unsafe or not-reached"));
		TreeDirectory.KnownTree tree = this.trees.get(this.visits.get(actor, id).tree());
		Change change = this.changes.openAnyhow(tree);
		Visits.Visit present = this.visits.get(actor, id);
		unchanged.accept(present.revision());
		if (present.outcome() != null) {
			throw Problem.of(ProblemType.CONFLICT, "What came of this visit is told already.");
		}
		if (told.visitedOn().isAfter(change.today())) {
			throw Problem.invalid("#/visitedOn", "out-of-range", "must not be after today, " + change.today());
		}
		this.cameOfIt.requireMeasurementFits(tree, outcome, told.measurement());
		UUID report = this.cameOfIt.report(change, actor, tree, outcome, told);
		this.recorder.told(change, actor, id, outcome, told, report);
		return this.visits.told(id);
	}

}
