package county.bigtree.registry.county.web;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.EmptyCounty;
import county.bigtree.registry.http.DryRun;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;

import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

/**
 * The emptying of counties for practice.
 */
@RestController
@Tag(name = "Counties")
class EmptyingController {

	private final EmptyCounty emptying;

	EmptyingController(EmptyCounty emptying) {
		this.emptying = emptying;
	}

	@PostMapping("/api/v1/counties/{county}/emptying")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "emptyCounty", summary = "Take all trees of a county for practice off its books")
	EmptiedJson empty(@PathVariable String county, @RequestBody @Valid EmptyingBody body, Actor actor) {
		return new EmptiedJson(this.emptying.empty(actor, county, body.reason()));
	}

	/**
	 * Why it is emptied.
	 */
	record EmptyingBody(@NotBlank String reason) {
	}

	/**
	 * How many trees were taken off.
	 */
	record EmptiedJson(int trees) {
	}

}
