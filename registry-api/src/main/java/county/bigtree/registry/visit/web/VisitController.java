package county.bigtree.registry.visit.web;

import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.http.HttpStatus;
import java.net.URI;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.DryRun;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.visit.OutcomeBody;
import county.bigtree.registry.visit.PlanBody;
import county.bigtree.registry.visit.PlanVisit;
import county.bigtree.registry.visit.TellOutcome;
import county.bigtree.registry.visit.Visits;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import org.jspecify.annotations.Nullable;

import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Visits.
 */
@RestController
@Tag(name = "Visits", description = "Work for verifiers at a tree, and what came of it.")
class VisitController {

	private static final String VISITS = "visits";

	private final Visits visits;

	private final PlanVisit planning;

	private final TellOutcome telling;

	VisitController(Visits visits, PlanVisit planning, TellOutcome telling) {
		this.visits = visits;
		this.planning = planning;
		this.telling = telling;
	}

	@GetMapping("/api/v1/visits")
	@Access(Who.VERIFIER)
	@Operation(operationId = "listVisits", summary = "One's own visits, and for coordinators those of their counties")
	Page<VisitJson> list(@RequestParam(required = false) @Nullable String county,
			@RequestParam(defaultValue = "false") boolean mine, @RequestParam(required = false) @Nullable Boolean open,
			Paging paging, Actor actor) {
		UUID after = paging.cursor(VISITS, 1).map((cursor) -> cursor.uuid(0)).orElse(new UUID(0, 0));
		return Page.cut(this.visits.list(actor, county, mine, open, after, paging.oneMore()), paging, VisitJson::from,
				(last) -> Cursor.of(VISITS, last.id()));
	}

	@PostMapping("/api/v1/visits")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.VERIFIER)
	@Operation(operationId = "planVisit", summary = "Plan a visit: for oneself, or as a coordinator for a verifier")
	ResponseEntity<VisitJson> plan(@RequestBody @Valid PlanBody body, Actor actor) {
		UUID id = this.planning.plan(actor, body);
		return ResponseEntity.created(URI.create("/api/v1/visits/" + id)).body(get(id, actor));
	}

	@GetMapping("/api/v1/visits/{id}")
	@Access(Who.VERIFIER_OR_GUEST)
	@Operation(operationId = "getVisit", summary = "A visit, for its verifier and the county's coordinators")
	VisitJson get(@PathVariable UUID id, Actor actor) {
		return VisitJson.from(this.visits.get(actor, id));
	}

	@PostMapping("/api/v1/visits/{id}/outcome")
	@DryRun
	@Access(Who.VERIFIER_OR_GUEST)
	@Operation(operationId = "tellVisitOutcome", summary = "Tell, once, what came of a visit")
	VisitJson tell(@PathVariable UUID id, @RequestBody @Valid OutcomeBody body, IfMatch ifMatch, Actor actor) {
		return VisitJson
			.from(this.telling.tell(actor, id, body, (revision) -> ifMatch.require(revision, () -> get(id, actor))));
	}

}
