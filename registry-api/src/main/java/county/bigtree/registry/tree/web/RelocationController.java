package county.bigtree.registry.tree.web;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.DryRun;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.AgreeOnLine;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

/**
 * Trees near the line of two counties.
 */
@RestController
@Tag(name = "Trees", description = "Trees as the public may see them, and what coordinators decide on them.")
class RelocationController {

	private final AgreeOnLine line;

	RelocationController(AgreeOnLine line) {
		this.line = line;
	}

	@GetMapping("/api/v1/relocations/{id}")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getRelocation",
			summary = "A proposal that a tree stands in another county; that its exact place was read is noted")
	AgreeOnLine.Proposal get(@PathVariable UUID id, Actor actor) {
		return this.line.open(actor, id);
	}

	@GetMapping("/api/v1/counties/{county}/relocations")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listRelocations",
			summary = "The proposals over the county's line that wait for an answer; that their exact places were read is noted")
	Page<AgreeOnLine.Proposal> list(@PathVariable String county, Actor actor) {
		if (!actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "This is for the coordinators of the county.");
		}
		return Page.whole(this.line.openWaiting(actor, county));
	}

	@PostMapping("/api/v1/relocations/{id}/decision")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "answerRelocation", summary = "Agree that a tree stands in the other county, or don't")
	AgreeOnLine.Proposal answer(@PathVariable UUID id, @RequestBody @Valid AnswerBody body, IfMatch ifMatch,
			Actor actor) {
		this.line.answer(actor, id, body.accept(), body.reason(),
				(revision) -> ifMatch.require(revision, () -> this.line.get(actor, id)));
		return this.line.get(actor, id);
	}

	/**
	 * An answer.
	 */
	record AnswerBody(@NotNull Boolean accept, @NotBlank @Size(max = 2000) String reason) {
	}

}
