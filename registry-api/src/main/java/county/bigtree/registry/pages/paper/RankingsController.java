package county.bigtree.registry.pages.paper;

import java.time.LocalDate;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.pages.CountyOfPage;
import county.bigtree.registry.paper.PaperSize;
import county.bigtree.registry.paper.PrintPaper;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * The rankings of a county as a booklet.
 */
@RestController
@Tag(name = "Papers", description = "Papers to print, as tagged PDF.")
class RankingsController {

	private final CountyOfPage counties;

	private final Rankings rankings;

	private final Sheets sheets;

	private final PrintPaper printing;

	RankingsController(CountyOfPage counties, Rankings rankings, Sheets sheets, PrintPaper printing) {
		this.counties = counties;
		this.rankings = rankings;
		this.sheets = sheets;
		this.printing = printing;
	}

	@GetMapping(path = "/exports/{county}/rankings.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.ANYONE)
	@Operation(operationId = "printRankings",
			summary = "The rankings of a county as a booklet: rules, map, every species, what changed in a year, index")
	@ApiResponse(responseCode = "200", description = "The booklet, as tagged PDF",
			content = @Content(mediaType = MediaType.APPLICATION_PDF_VALUE,
					schema = @Schema(type = "string", format = "binary")))
	ResponseEntity<byte[]> rankings(@PathVariable String county,
			@Parameter(description = "The day of the rankings, as known now; today if left out",
					example = "2025-12-31") @RequestParam(required = false) @Nullable LocalDate asOf,
			@Parameter(description = "letter, or a4",
					example = "a4") @RequestParam(required = false) @Nullable String paper) {
		PaperSize size = PaperSize.of(paper);
		ReadCounties.County found = this.counties.get(county);
		LocalDate today = this.rankings.today(county);
		LocalDate day = (asOf != null) ? asOf : today;
		if (day.isAfter(today) || day.isBefore(Rulebook.BEGINNING)) {
			throw Problem
				.of(ProblemType.INVALID_PARAMETER,
						"asOf must be from %s to today, %s.".formatted(Rulebook.BEGINNING, today))
				.with("parameter", "asOf");
		}
		return this.printing.forAnyone("rankings", this.rankings.state(found, day), () -> {
			var model = this.rankings.of(found, day);
			model.putAll(this.sheets.begin(this.sheets.say("paper.rankings.title", found.name()),
					this.sheets.say("paper.rankings.foot", found.name(), found.state())));
			return model;
		}, size, county + "-rankings-" + day);
	}

}
