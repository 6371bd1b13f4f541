package county.bigtree.registry.tree.web;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.tree.CorrectTree;
import county.bigtree.registry.tree.PlaceBody;
import county.bigtree.registry.tree.TreeDirectory;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

/**
 * Corrections of a tree by a coordinator.
 */
@RestController
@Tag(name = "Trees")
class TreeCorrectionController {

	private final CorrectTree correctTree;

	private final TreeDirectory trees;

	TreeCorrectionController(CorrectTree correctTree, TreeDirectory trees) {
		this.correctTree = correctTree;
		this.trees = trees;
	}

	@PostMapping("/api/v1/trees/{tree}/identifications")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "identifyTree", summary = "Correct what a tree is")
	TreeDirectory.KnownTree identify(@PathVariable String tree, @RequestBody @Valid IdentificationBody body,
			IfMatch ifMatch, Actor actor) {
		this.correctTree.identify(actor, tree, body.species(), body.by(), body.reason(),
				(revision) -> ifMatch.require(revision, () -> this.trees.get(tree)));
		return this.trees.get(tree);
	}

	@PostMapping("/api/v1/trees/{tree}/location")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "locateTree", summary = "Correct where a tree stands")
	TreeDirectory.KnownTree locate(@PathVariable String tree, @RequestBody @Valid LocationBody body, IfMatch ifMatch,
			Actor actor) {
		this.correctTree.locate(actor, tree, body.location(), body.county(), body.reason(),
				(revision) -> ifMatch.require(revision, () -> this.trees.get(tree)));
		return this.trees.get(tree);
	}

	/**
	 * A corrected identification.
	 */
	record IdentificationBody(@NotNull String species,
			@NotNull @Pattern(regexp = "leaf|fruit|bark|bud|record") String by, @NotBlank String reason) {
	}

	/**
	 * A corrected location.
	 */
	record LocationBody(@NotNull @Valid PlaceBody location, @Nullable String county, @NotBlank String reason) {
	}

}
