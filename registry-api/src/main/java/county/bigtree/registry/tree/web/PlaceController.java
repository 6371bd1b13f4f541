package county.bigtree.registry.tree.web;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.tree.OpenPlace;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * Exact places of trees.
 */
@RestController
@Tag(name = "Trees", description = "Trees as the public may see them, and what coordinators decide on them.")
class PlaceController {

	private final OpenPlace places;

	PlaceController(OpenPlace places) {
		this.places = places;
	}

	@GetMapping("/api/v1/trees/{tree}/place")
	@Access(Who.VERIFIER)
	@Operation(operationId = "getPlace",
			summary = "Where a tree exactly stands, for the county's verifiers; that it was read is noted")
	OpenPlace.ExactPlace get(@PathVariable String tree, Actor actor) {
		return this.places.open(actor, tree);
	}

}
