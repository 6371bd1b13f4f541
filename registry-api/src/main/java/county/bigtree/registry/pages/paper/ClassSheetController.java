package county.bigtree.registry.pages.paper;

import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.measure.ClassExercise;
import county.bigtree.registry.paper.PaperSize;
import county.bigtree.registry.paper.PrintPaper;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * A sheet for a class, of one side, and its answers.
 */
@RestController
@Tag(name = "Papers", description = "Papers to print, as tagged PDF.")
class ClassSheetController {

	private final Sheets sheets;

	private final PrintPaper printing;

	ClassSheetController(Sheets sheets, PrintPaper printing) {
		this.sheets = sheets;
		this.printing = printing;
	}

	@GetMapping(path = "/class-sheet.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.ANYONE)
	@Operation(operationId = "printClassSheet",
			summary = "A sheet for a class: girth, height, crown and points by hand")
	@ApiResponse(responseCode = "200", description = "One side, as tagged PDF",
			content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	ResponseEntity<byte[]> sheet(@Parameter(description = "letter, or a4",
			example = "a4") @RequestParam(required = false) @Nullable String paper) {
		return this.printing.forAnyone("class-sheet", model("paper.class.title"), PaperSize.of(paper), "class-sheet");
	}

	@GetMapping(path = "/class-sheet-answers.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.ANYONE)
	@Operation(operationId = "printClassAnswers", summary = "The answers to the sheet for a class, worked line by line")
	@ApiResponse(responseCode = "200", description = "One side, as tagged PDF",
			content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	ResponseEntity<byte[]> answers(@Parameter(description = "letter, or a4",
			example = "a4") @RequestParam(required = false) @Nullable String paper) {
		return this.printing.forAnyone("class-answers", model("paper.class.answers"), PaperSize.of(paper),
				"class-sheet-answers");
	}

	private Map<String, @Nullable Object> model(String title) {
		Map<String, @Nullable Object> model = this.sheets.begin(this.sheets.say(title),
				this.sheets.say("paper.class.foot"));
		model.put("exercise", ClassExercise.of());
		return model;
	}

}
