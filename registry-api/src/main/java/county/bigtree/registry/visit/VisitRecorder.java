package county.bigtree.registry.visit;

import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.AssignedWork;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * Appends the facts of visits and ends their changes.
 */
@Component
class VisitRecorder {

	private final Facts facts;

	private final Texts texts;

	private final Journal journal;

	VisitRecorder(Facts facts, Texts texts, Journal journal) {
		this.facts = facts;
		this.texts = texts;
		this.journal = journal;
	}

	UUID planned(Change change, Actor actor, UUID tree, VisitPurpose purpose, UUID verifier, PlanBody plan) {
		UUID id = Uuid7.next();
		this.facts.append(change, FactTable.VISIT, "id", id, "tree", tree, "purpose", purpose.code(), "verifier",
				verifier, "guest", plan.forGuest() ? true : null, "companion",
				this.texts.keep(change, plan.companion()), "by_when", plan.byWhen(), "arranged_on", plan.arrangedOn(),
				"arranged_at", plan.arrangedAt(), "planned_by", actor.id(), "notes",
				this.texts.keep(change, plan.notes()));
		this.journal.close(change, plan.forGuest() ? "guest-visit-planned" : "visit-planned", actor.id());
		return id;
	}

	/** By someone else, of what they can't do any more. */
	void handedBack(Change change, UUID visit, AssignedWork.Leaving leaving) {
		VisitOutcome outcome = VisitOutcome.HANDED_BACK;
		this.facts.append(change, FactTable.VISIT_OUTCOME, "visit", visit, "outcome", outcome.code(), "visited_on",
				change.today(), "remarks", this.texts.keep(change, leaving.reason()), "by_person", leaving.by());
		this.journal.close(change, "visit-" + outcome.code(), leaving.by());
	}

	void told(Change change, Actor actor, UUID visit, VisitOutcome outcome, OutcomeBody told, @Nullable UUID report) {
		this.facts.append(change, FactTable.VISIT_OUTCOME, "visit", visit, "outcome", outcome.code(), "visited_on",
				told.visitedOn(), "remarks", this.texts.keep(change, told.remarks()), "measurement", told.measurement(),
				"condition_report", report, "by_person", actor.id());
		this.journal.close(change, "visit-" + outcome.code(), actor.id());
	}

}
