package county.bigtree.registry.visit;

import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.people.Verifiers;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Plans a visit: a coordinator for any verifier of the county or for a guest, a verifier
 * for themselves.
 */
@Service
public class PlanVisit {

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final VisitRecorder recorder;

	private final Verifiers verifiers;

	private final JdbcClient jdbc;

	PlanVisit(TreeDirectory trees, ChangeAtTree changes, VisitRecorder recorder, Verifiers verifiers, JdbcClient jdbc) {
		this.verifiers = verifiers;
		this.trees = trees;
		this.changes = changes;
		this.recorder = recorder;
		this.jdbc = jdbc;
	}

	/**
	 * Plans the visit and answers its id.
	 */
	@Transactional
	public UUID plan(Actor actor, PlanBody plan) {
		VisitPurpose purpose = VisitPurpose.find(plan.purpose())
			.orElseThrow(
					() -> Problem.invalid("#/purpose", "unknown", "must be sign-off, remeasure, condition or doubt"));
		TreeDirectory.KnownTree tree = this.trees.find(plan.tree())
			.orElseThrow(() -> Problem.invalid("#/tree", "unknown", "no tree has this id or tag"));
		UUID verifier = verifier(actor, tree.county(), plan);
		Change change = this.changes.open(tree);
		requireOnTheBooks(tree);
		requireToCome("#/byWhen", plan.byWhen(), change.today());
		requireToCome("#/arrangedOn", plan.arrangedOn(), change.today());
		requireArrangedForOne(plan, change);
		return this.recorder.planned(change, actor, tree.id(), purpose, verifier, plan);
	}

	private UUID verifier(Actor actor, String county, PlanBody plan) {
		if (!actor.isVerifierIn(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only verifiers of the county may plan a visit.");
		}
		UUID asked = plan.verifier();
		if (!plan.forGuest() && (asked == null || asked.equals(actor.id()))) {
			return actor.id();
		}
		if (!actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of the county may plan a visit for others.");
		}
		return plan.forGuest() ? this.verifiers.requireGuest(asked, county) : this.verifiers.require(asked, county);
	}

	private void requireOnTheBooks(TreeDirectory.KnownTree tree) {
		boolean takenOff = this.jdbc.sql("select exists (select from taking_off where tree = ?)")
			.param(tree.id())
			.query(Boolean.class)
			.single();
		if (takenOff) {
			throw Problem.of(ProblemType.CONFLICT, "This tree was taken off the books.");
		}
	}

	private static void requireToCome(String pointer, @Nullable LocalDate day, LocalDate today) {
		if (day != null && day.isBefore(today)) {
			throw Problem.invalid(pointer, "out-of-range", "must not be before today, " + today);
		}
	}

	private static void requireArrangedForOne(PlanBody plan, Change change) {
		if (plan.arrangedAt() == null) {
			return;
		}
		if (plan.arrangedOn() != null) {
			throw Problem.invalid("#/arrangedAt", "one-of", "give either the day or the instant");
		}
		if (plan.arrangedAt().isBefore(change.recordedAt())) {
			throw Problem.invalid("#/arrangedAt", "out-of-range", "must not be past");
		}
	}

}
