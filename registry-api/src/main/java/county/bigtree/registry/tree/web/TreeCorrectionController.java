package county.bigtree.registry.tree.web;

import county.bigtree.registry.problem.Problem;
import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.tree.AgreeOnLine;
import java.util.UUID;
import county.bigtree.registry.http.DryRun;
import org.springframework.stereotype.Component;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import county.bigtree.registry.tree.StemRulingBody;
import county.bigtree.registry.tree.SplitBody;
import county.bigtree.registry.tree.SplitTree;
import county.bigtree.registry.tree.RuleOnTree;
import county.bigtree.registry.tree.MergeTrees;
import java.util.function.LongConsumer;
import java.net.URI;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.tree.CorrectTree;
import county.bigtree.registry.tree.PlaceBody;
import county.bigtree.registry.tree.TellApart;
import county.bigtree.registry.tree.TreeDirectory;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Corrections of a tree by a coordinator.
 */
@RestController
@Tag(name = "Trees", description = "Trees as the public may see them, and what coordinators decide on them.")
class TreeCorrectionController {

	private final CorrectTree correctTree;

	private final Decisions decisions;

	private final TreeDirectory trees;

	TreeCorrectionController(CorrectTree correctTree, Decisions decisions, TreeDirectory trees) {
		this.correctTree = correctTree;
		this.decisions = decisions;
		this.trees = trees;
	}

	@PostMapping("/api/v1/trees/{tree}/identifications")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "identifyTree", summary = "Correct what a tree is")
	TreeDirectory.KnownTree identify(@PathVariable String tree, @RequestBody @Valid IdentificationBody body,
			IfMatch ifMatch, Actor actor) {
		this.correctTree.identify(actor, tree, body.species(), body.by(), body.reason(), unchanged(ifMatch, tree));
		return this.trees.get(tree);
	}

	@PostMapping("/api/v1/trees/{tree}/location")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "locateTree",
			summary = "Correct where a tree stands; over a county's line, propose it to the coordinator of the other")
	@ApiResponse(responseCode = "200", description = "It is corrected",
			content = @Content(schema = @Schema(implementation = TreeDirectory.KnownTree.class)))
	@ApiResponse(responseCode = "202", description = "It is proposed",
			content = @Content(schema = @Schema(implementation = AgreeOnLine.Proposal.class)))
	ResponseEntity<?> locate(@PathVariable String tree, @RequestBody @Valid LocationBody body, IfMatch ifMatch,
			Actor actor) {
		String county = body.county();
		String from = this.trees.get(tree).county();
		if (county == null || actor.isCoordinatorOf(county) && actor.isCoordinatorOf(from)) {
			this.correctTree.locate(actor, tree, body.location(), county, body.reason(), unchanged(ifMatch, tree));
			return ResponseEntity.ok(this.trees.get(tree));
		}
		UUID proposal = this.decisions.line.propose(actor, tree, body.location(), county, body.reason(),
				unchanged(ifMatch, tree));
		return ResponseEntity.accepted()
			.location(URI.create("/api/v1/relocations/" + proposal))
			.body(this.decisions.line.get(actor, proposal));
	}

	@PostMapping("/api/v1/trees/{tree}/visibility")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "setVisibility", summary = "Say how much of a tree's place the public is shown")
	TreeDirectory.KnownTree visibility(@PathVariable String tree, @RequestBody @Valid VisibilityBody body,
			IfMatch ifMatch, Actor actor) {
		Disclosure shown = Disclosure.find(body.visibility())
			.orElseThrow(() -> Problem.invalid("#/visibility", "unknown", "must be exact, nearby or county"));
		this.correctTree.show(actor, tree, shown, body.reason(), unchanged(ifMatch, tree));
		return this.trees.get(tree);
	}

	@PostMapping("/api/v1/trees/{tree}/eligibility")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "judgeEligibility", summary = "Say whether a tree may be ranked")
	TreeDirectory.KnownTree eligibility(@PathVariable String tree, @RequestBody @Valid EligibilityBody body,
			IfMatch ifMatch, Actor actor) {
		this.decisions.ruling.eligible(actor, tree, body.eligible(), body.reason(), unchanged(ifMatch, tree));
		return this.trees.get(tree);
	}

	@PostMapping("/api/v1/trees/{tree}/stem-rulings")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "ruleOnStems", summary = "Rule how a tree's stems are taken")
	TreeDirectory.KnownTree stemRuling(@PathVariable String tree, @RequestBody @Valid StemRulingBody body,
			IfMatch ifMatch, Actor actor) {
		this.decisions.ruling.stems(actor, tree, body, unchanged(ifMatch, tree));
		return this.trees.get(tree);
	}

	@PostMapping("/api/v1/trees/{tree}/merge")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "mergeTree", summary = "Merge a tree into another entry of the same tree")
	TreeDirectory.KnownTree merge(@PathVariable String tree, @RequestBody @Valid MergeBody body, IfMatch ifMatch,
			Actor actor) {
		this.decisions.merging.merge(actor, tree, body.into(), body.reason(), unchanged(ifMatch, tree));
		return this.trees.get(tree);
	}

	@PostMapping("/api/v1/trees/{tree}/merge/revocation")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "revokeMerge", summary = "Take a merge back")
	TreeDirectory.KnownTree revokeMerge(@PathVariable String tree, @RequestBody @Valid ReasonBody body, IfMatch ifMatch,
			Actor actor) {
		this.decisions.merging.revoke(actor, tree, body.reason(), unchanged(ifMatch, tree));
		return this.trees.get(tree);
	}

	@PostMapping("/api/v1/trees/{tree}/distinctions")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "tellApart",
			summary = "Record that two entries are two trees: they are no longer proposed to be merged until one is relocated")
	TreeDirectory.KnownTree tellApart(@PathVariable String tree, @RequestBody @Valid DistinctionBody body,
			IfMatch ifMatch, Actor actor) {
		this.decisions.apart.tell(actor, tree, body.from(), body.reason(), unchanged(ifMatch, tree));
		return this.trees.get(tree);
	}

	@PostMapping("/api/v1/trees/{tree}/split")
	@ResponseStatus(HttpStatus.CREATED)
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "splitTree", summary = "Split off a tree that was taken for this one")
	ResponseEntity<TreeDirectory.KnownTree> split(@PathVariable String tree, @RequestBody @Valid SplitBody body,
			IfMatch ifMatch, Actor actor) {
		TreeDirectory.KnownTree other = this.trees
			.get(this.decisions.splitting.split(actor, tree, body, unchanged(ifMatch, tree)));
		return ResponseEntity.created(URI.create("/api/v1/trees/" + other.id())).body(other);
	}

	private LongConsumer unchanged(IfMatch ifMatch, String tree) {
		return (revision) -> ifMatch.require(revision, () -> this.trees.get(tree));
	}

	/**
	 * The use cases behind the decisions.
	 */
	@Component
	static class Decisions {

		private final RuleOnTree ruling;

		private final MergeTrees merging;

		private final TellApart apart;

		private final SplitTree splitting;

		private final AgreeOnLine line;

		Decisions(RuleOnTree ruling, MergeTrees merging, TellApart apart, SplitTree splitting, AgreeOnLine line) {
			this.ruling = ruling;
			this.merging = merging;
			this.apart = apart;
			this.splitting = splitting;
			this.line = line;
		}

	}

	/**
	 * How much is shown.
	 */
	record VisibilityBody(@NotBlank String visibility, @NotBlank String reason) {
	}

	/**
	 * Whether it may be ranked.
	 */
	record EligibilityBody(@NotNull Boolean eligible, @NotBlank String reason) {
	}

	/**
	 * The entry that is kept, by id or tag.
	 */
	record MergeBody(@NotBlank String into, @NotBlank String reason) {
	}

	/**
	 * The other entry, by id or tag.
	 */
	record DistinctionBody(@NotBlank String from, @NotBlank String reason) {
	}

	/**
	 * Why.
	 */
	record ReasonBody(@NotBlank String reason) {
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
