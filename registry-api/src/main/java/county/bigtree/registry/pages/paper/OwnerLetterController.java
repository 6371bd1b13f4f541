package county.bigtree.registry.pages.paper;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.paper.PaperSize;
import county.bigtree.registry.paper.PrintPaper;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * The letter to an owner, for a coordinator to sign and send.
 */
@RestController
@Tag(name = "Papers", description = "Papers to print, as tagged PDF.")
class OwnerLetterController {

	private final OwnerLetters letters;

	private final PrintPaper printing;

	OwnerLetterController(OwnerLetters letters, PrintPaper printing) {
		this.letters = letters;
		this.printing = printing;
	}

	@GetMapping(path = "/trees/{tree}/owners/{owner}/letter.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "printOwnerLetter",
			summary = "A letter to an owner of a tree that won or lost a title, and why; that the owner's record was read is noted")
	@ApiResponse(responseCode = "200", description = "One side, as tagged PDF",
			content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	ResponseEntity<byte[]> letter(@PathVariable String tree, @PathVariable UUID owner,
			@Parameter(description = "letter, or a4",
					example = "a4") @RequestParam(required = false) @Nullable String paper,
			Api api, Actor actor) {
		PaperSize size = PaperSize.of(paper);
		JsonNode found = api.get("/trees/{tree}", tree);
		JsonNode to = owner(found.path("id").asString(""), owner, api);
		return this.printing.forOne("owner-letter", this.letters.of(found, to, api, actor), size,
				found.path("tag").asString("") + "-letter");
	}

	private static JsonNode owner(String tree, UUID id, Api api) {
		for (JsonNode owner : api.get("/trees/{tree}/owners", tree).path("items")) {
			if (owner.path("id").asString("").equals(id.toString())) {
				return owning(owner);
			}
		}
		throw Problem.of(ProblemType.CONFLICT, "They are no owner of this tree.");
	}

	private static JsonNode owning(JsonNode owner) {
		if (owner.hasNonNull("endedAt")) {
			throw Problem.of(ProblemType.CONFLICT, "They own the tree no more.");
		}
		return owner;
	}

}
