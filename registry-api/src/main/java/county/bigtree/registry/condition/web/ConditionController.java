package county.bigtree.registry.condition.web;

import county.bigtree.registry.http.DryRun;
import java.net.URI;
import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.domain.standing.Condition;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.condition.Began;
import county.bigtree.registry.condition.Began.Between;
import county.bigtree.registry.condition.ConditionReports;
import county.bigtree.registry.condition.ReportCondition;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.TreeDirectory;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Condition reports.
 */
@RestController
@Tag(name = "Condition reports", description = "In what condition a tree was found.")
class ConditionController {

	private static final String REPORTS = "condition-reports";

	private final ReportCondition reporting;

	private final ConditionReports reports;

	private final TreeDirectory trees;

	ConditionController(ReportCondition reporting, ConditionReports reports, TreeDirectory trees) {
		this.reporting = reporting;
		this.reports = reports;
		this.trees = trees;
	}

	@PostMapping("/api/v1/trees/{tree}/condition-reports")
	@ResponseStatus(HttpStatus.CREATED)
	@DryRun
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "reportCondition", summary = "Report in what condition a tree was found")
	ResponseEntity<ConditionReports.Report> report(@PathVariable String tree, @RequestBody @Valid ReportBody body,
			Actor actor) {
		Condition condition = Condition.find(body.condition())
			.orElseThrow(() -> Problem.invalid("#/condition", "unknown",
					"must be upright, declining, damaged, dead, fallen, removed or not-found"));
		UUID id = this.reporting.report(actor, tree, condition, body.observedOn(),
				Began.of(body.began(), body.between()), body.remarks());
		return ResponseEntity.created(URI.create("/api/v1/condition-reports/" + id)).body(this.reports.get(id));
	}

	@GetMapping("/api/v1/condition-reports/{id}")
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "getConditionReport", summary = "A condition report")
	ConditionReports.Report get(@PathVariable UUID id, Actor actor) {
		ConditionReports.Report report = this.reports.get(id);
		if (!report.reportedBy().equals(actor.id()) && !actor.isVerifierIn(this.trees.get(report.tree()).county())) {
			throw Problem.notFound("No condition report has this id.");
		}
		return report;
	}

	@GetMapping("/api/v1/counties/{county}/condition-reports")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listConditionReports", summary = "The condition reports of a county")
	Page<ConditionReports.Report> list(@PathVariable String county,
			@RequestParam(required = false) @Nullable String status, Paging paging) {
		UUID after = paging.cursor(REPORTS, 1).map((cursor) -> cursor.uuid(0)).orElse(new UUID(0, 0));
		return Page.cut(this.reports.list(county, status, after, paging.oneMore()), paging, (report) -> report,
				(last) -> Cursor.of(REPORTS, last.id()));
	}

	@PostMapping("/api/v1/condition-reports/{id}/decision")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "decideConditionReport", summary = "Decide on a condition report")
	ConditionReports.Report decide(@PathVariable UUID id, @RequestBody @Valid DecisionBody body, IfMatch ifMatch,
			Actor actor) {
		this.reporting.decide(actor, id, body.accept(), Began.of(body.began(), body.between()), body.reason(),
				(revision) -> ifMatch.require(revision, () -> this.reports.get(id)));
		return this.reports.get(id);
	}

	/**
	 * What was found.
	 *
	 * @param began when the condition began, as far as a coordinator knows
	 * @param between in its place, the days between which it began
	 */
	record ReportBody(@NotNull String condition, @NotNull LocalDate observedOn, @Nullable LocalDate began,
			@Nullable @Valid Between between, @Nullable String remarks) {
	}

	/**
	 * A coordinator's decision.
	 */
	record DecisionBody(@NotNull Boolean accept, @Nullable LocalDate began, @Nullable @Valid Between between,
			@Nullable String reason) {
	}

}
