package county.bigtree.registry.handover.web;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.handover.WriteHandover;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * A county's open work, for who takes over.
 */
@RestController
@Tag(name = "Handover", description = "A county's open work in one account, for who takes the office over.")
class HandoverController {

	private final WriteHandover writing;

	HandoverController(WriteHandover writing) {
		this.writing = writing;
	}

	@GetMapping("/api/v1/counties/{county}/handover")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getHandover",
			summary = "What waits, is planned, is due and has been ruled in a county, and its rulebooks with their reasons")
	WriteHandover.Handover json(@PathVariable String county, Actor actor) {
		return this.writing.of(actor, county);
	}

}
