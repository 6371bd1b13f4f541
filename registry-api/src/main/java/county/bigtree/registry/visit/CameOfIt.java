package county.bigtree.registry.visit;

import java.util.UUID;

import county.bigtree.domain.standing.Condition;
import county.bigtree.registry.condition.ConditionReports;
import county.bigtree.registry.condition.ReportCondition;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * The measurement and the condition report that came of a visit: those named must be of
 * the tree that was visited; a report that the outcome calls for and nobody filed is
 * filed.
 */
@Component
class CameOfIt {

	private final ReadMeasurements measurements;

	private final ConditionReports reports;

	private final ReportCondition reporting;

	private final TreeDirectory trees;

	CameOfIt(ReadMeasurements measurements, ConditionReports reports, ReportCondition reporting, TreeDirectory trees) {
		this.measurements = measurements;
		this.reports = reports;
		this.reporting = reporting;
		this.trees = trees;
	}

	void requireMeasurementFits(TreeDirectory.KnownTree tree, VisitOutcome outcome, @Nullable UUID measurement) {
		if (measurement == null) {
			return;
		}
		if (outcome != VisitOutcome.MEASURED) {
			throw Problem.invalid("#/measurement", "not-measured", "comes only of a visit at which it was measured");
		}
		if (this.measurements.find(measurement).filter((found) -> isOf(tree, found.tree())).isEmpty()) {
			throw Problem.invalid("#/measurement", "unknown", "must be a measurement of this tree");
		}
	}

	/**
	 * The report that came of the visit: the one named, else the one now filed, else
	 * none.
	 */
	@Nullable UUID report(Change change, Actor actor, TreeDirectory.KnownTree tree, VisitOutcome outcome, OutcomeBody told) {
		if (told.conditionReport() != null) {
			requireReportFits(tree, outcome, told.conditionReport());
			return told.conditionReport();
		}
		return outcome.reports()
			.map((condition) -> this.reporting.reportWithin(change, actor, tree, condition, told.visitedOn(),
					told.remarks()))
			.orElse(null);
	}

	private void requireReportFits(TreeDirectory.KnownTree tree, VisitOutcome outcome, UUID id) {
		ConditionReports.Report report = this.reports.find(id)
			.filter((found) -> isOf(tree, found.tree()))
			.orElseThrow(
					() -> Problem.invalid("#/conditionReport", "unknown", "must be a condition report on this tree"));
		if (!Condition.find(report.condition()).filter(outcome::fits).isPresent()) {
			throw Problem.invalid("#/conditionReport", "contradicts",
					"the outcome %s does not go with the condition %s".formatted(outcome.code(), report.condition()));
		}
	}

	/** Whether the two are one tree, be it by a merge. */
	private boolean isOf(TreeDirectory.KnownTree tree, UUID other) {
		return this.trees.get(other).kept().equals(tree.kept());
	}

}
