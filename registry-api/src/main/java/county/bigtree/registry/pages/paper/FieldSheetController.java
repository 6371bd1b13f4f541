package county.bigtree.registry.pages.paper;

import java.net.URI;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.paper.PaperSize;
import county.bigtree.registry.paper.PrintPaper;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Field sheets, two sides at most.
 */
@RestController
@Tag(name = "Papers", description = "Papers to print, as tagged PDF.")
class FieldSheetController {

	private final FieldSheets sheets;

	private final PrintPaper printing;

	FieldSheetController(FieldSheets sheets, PrintPaper printing) {
		this.sheets = sheets;
		this.printing = printing;
	}

	@GetMapping(path = "/field-sheet.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.ANYONE)
	@Operation(operationId = "printFieldSheet", summary = "A blank field sheet")
	@ApiResponse(responseCode = "200", description = "Two sides, as tagged PDF",
			content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	ResponseEntity<byte[]> blank(@Parameter(description = "letter, or a4",
			example = "a4") @RequestParam(required = false) @Nullable String paper) {
		PaperSize size = PaperSize.of(paper);
		return this.printing.forAnyone("field-sheet", this.sheets.blank(), size, "field-sheet");
	}

	@GetMapping(path = "/trees/{tree}/field-sheet.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.ANYONE)
	@Operation(operationId = "printFieldSheetOfTree",
			summary = "A field sheet for a tree, with its place and figures as far as the asker may see them")
	@ApiResponse(responseCode = "200", description = "Two sides, as tagged PDF",
			content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	@ApiResponse(responseCode = "307",
			description = "It was merged: the sheet of the tree that is kept stands at the Location",
			content = @Content)
	ResponseEntity<byte[]> ofTree(@PathVariable String tree,
			@Parameter(description = "letter, or a4",
					example = "a4") @RequestParam(required = false) @Nullable String paper,
			Api api, @Nullable Actor actor) {
		PaperSize size = PaperSize.of(paper);
		Api.Moved moved = api.moved("/trees/{tree}", tree);
		if (moved != null) {
			return ResponseEntity.status(HttpStatus.TEMPORARY_REDIRECT)
				.location(URI.create("/trees/" + moved.kept() + "/field-sheet.pdf"))
				.build();
		}
		JsonNode found = api.get("/trees/{tree}", tree);
		String tag = found.path("tag").asString("");
		Map<String, @Nullable Object> model = this.sheets.filled(found, api, actor);
		String name = tag + "-field-sheet";
		return (actor == null) ? this.printing.forAnyone("field-sheet", model, size, name)
				: this.printing.forOne("field-sheet", model, size, name);
	}

}
