package county.bigtree.registry.condition;

import java.time.LocalDate;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.standing.Standings;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reports in what condition a tree was found, and decides on such reports. A
 * coordinator's own report needs no decision.
 */
@Service
public class ReportCondition {

	private final Journal journal;

	private final Recorder recorder;

	private final ConditionReports reports;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	ReportCondition(Journal journal, Recorder recorder, ConditionReports reports, TreeDirectory trees,
			ChangeAtTree changes) {
		this.journal = journal;
		this.recorder = recorder;
		this.reports = reports;
		this.trees = trees;
		this.changes = changes;
	}

	/**
	 * Files a report and answers its id.
	 */
	@Transactional
	public UUID report(Actor actor, String idOrTag, Condition condition, LocalDate observedOn, @Nullable Began began,
			@Nullable String remarks) {
		TreeDirectory.KnownTree tree = this.trees.getShown(idOrTag, actor);
		if (!actor.isVolunteerIn(tree.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only volunteers of the county may file a report.");
		}
		Change change = this.changes.open(tree);
		requirePast("#/observedOn", observedOn, change.today());
		UUID report = this.recorder.report(change, tree.id(), condition, observedOn, actor, remarks);
		if (actor.isCoordinatorOf(tree.county())) {
			requireOrder(began, observedOn);
			this.recorder.decide(change, report, tree.id(), condition, true, began, actor, null);
		}
		this.journal.close(change, "condition-reported", actor.id());
		return report;
	}

	/**
	 * Files a report within a change at the tree that the caller has begun and ends, and
	 * decides on it at once where it is a coordinator's own. Answers its id.
	 */
	public UUID reportWithin(Change change, Actor actor, TreeDirectory.KnownTree tree, Condition condition,
			LocalDate observedOn, @Nullable String remarks) {
		UUID report = this.recorder.report(change, tree.id(), condition, observedOn, actor, remarks);
		if (actor.isCoordinatorOf(tree.county())) {
			this.recorder.decide(change, report, tree.id(), condition, true, null, actor, null);
		}
		return report;
	}

	/**
	 * Takes a condition over from an older record within a change that the caller has
	 * begun, after which the caller refreshes the standings and ends it.
	 * @param by the coordinator who answers for it
	 */
	public void carryOver(Change change, UUID tree, Condition condition, LocalDate observedOn, UUID by) {
		this.recorder.carryOver(change, tree, condition, observedOn, by);
	}

	/**
	 * What a condition means to a tree that holds a title.
	 */
	public static TitleReason meaning(Condition condition) {
		return switch (condition) {
			case FALLEN -> TitleReason.FELL;
			case DEAD -> TitleReason.DIED;
			case REMOVED -> TitleReason.REMOVED;
			case DAMAGED -> TitleReason.DAMAGED;
			case UPRIGHT, DECLINING, NOT_FOUND -> TitleReason.SEEN;
		};
	}

	/**
	 * Decides on a report.
	 * @param unchanged told its revision under the lock; refuses a stale one
	 */
	@Transactional
	public void decide(Actor actor, UUID id, boolean accept, @Nullable Began began, @Nullable String reason,
			LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.trees.get(this.reports.get(id).tree());
		if (!actor.isCoordinatorOf(tree.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of the county may decide on a report.");
		}
		Change change = this.changes.openAnyhow(tree);
		ConditionReports.Report present = this.reports.get(id);
		unchanged.accept(present.revision());
		if (!present.status().equals("waiting")) {
			throw Problem.of(ProblemType.CONFLICT, "This report is decided already.");
		}
		requireOrder(began, present.observedOn());
		Condition condition = Condition.find(present.condition()).orElseThrow();
		this.recorder.decide(change, id, tree.id(), condition, accept, began, actor, reason);
		this.journal.close(change, "condition-decided", actor.id());
	}

	private static void requirePast(String pointer, LocalDate day, LocalDate today) {
		if (day.isAfter(today)) {
			throw Problem.invalid(pointer, "out-of-range", "must not be after today, " + today);
		}
	}

	private static void requireOrder(@Nullable Began began, LocalDate observedOn) {
		if (began != null && began.latest().isAfter(observedOn)) {
			throw Problem.invalid("#/began", "out-of-range",
					"must not be after the day it was observed, " + observedOn);
		}
	}

	/**
	 * Appends the facts and lets the standings follow.
	 */
	@org.springframework.stereotype.Component
	static class Recorder {

		private final Facts facts;

		private final Texts texts;

		private final Standings standings;

		Recorder(Facts facts, Texts texts, Standings standings) {
			this.facts = facts;
			this.texts = texts;
			this.standings = standings;
		}

		UUID report(Change change, UUID tree, Condition condition, LocalDate observedOn, Actor actor,
				@Nullable String remarks) {
			UUID id = Uuid7.next();
			this.facts.append(change, FactTable.CONDITION_REPORT, "id", id, "tree", tree, "condition", condition.word(),
					"observed_on", observedOn, "reported_by", actor.id(), "remarks", this.texts.keep(change, remarks));
			return id;
		}

		void decide(Change change, UUID report, UUID tree, Condition condition, boolean accept, @Nullable Began began,
				Actor actor, @Nullable String reason) {
			this.facts.append(change, FactTable.CONDITION_DECISION, "report", report, "accepted", accept, "began_on",
					(began != null) ? began.latest() : null, "began_earliest",
					(began != null) ? began.earliest() : null, "by_person", actor.id(), "reason",
					this.texts.keep(change, reason));
			if (accept) {
				this.standings.refresh(change, tree, meaning(condition));
			}
		}

		void carryOver(Change change, UUID tree, Condition condition, LocalDate observedOn, UUID by) {
			UUID id = Uuid7.next();
			this.facts.append(change, FactTable.CONDITION_REPORT, "id", id, "tree", tree, "condition", condition.word(),
					"observed_on", observedOn, "reported_by", by);
			this.facts.append(change, FactTable.CONDITION_DECISION, "report", id, "accepted", true, "by_person", by);
		}

	}

}
