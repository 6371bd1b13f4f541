package county.bigtree.registry.openness.web;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.openness.ExportArchive;
import county.bigtree.registry.openness.ExportCounty;
import county.bigtree.registry.openness.OpenCounties;
import county.bigtree.registry.standing.web.StandingAnswers;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.core.io.Resource;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.ServletWebRequest;

/**
 * A county's open data as files.
 */
@RestController
@Tag(name = "Open data", description = "What anyone may take away: files of a county's trees, standings and scores.")
class ExportController {

	private static final String CSV = "text/csv";

	private static final String CSV_SENT = "text/csv;charset=utf-8";

	private static final String ZIP = "application/zip";

	private static final String GEO_JSON = "application/geo+json";

	private final OpenCounties counties;

	private final ExportCounty export;

	private final ExportArchive archive;

	private final StandingAnswers answers;

	private final WrittenFiles files;

	ExportController(OpenCounties counties, ExportCounty export, ExportArchive archive, StandingAnswers answers,
			WrittenFiles files) {
		this.counties = counties;
		this.export = export;
		this.archive = archive;
		this.answers = answers;
		this.files = files;
	}

	@GetMapping(path = "/exports/{county}/standings.csv", produces = CSV)
	@Access(Who.ANYONE)
	@Operation(operationId = "exportStandings",
			summary = "The rankings of all species of a county as CSV, on a day and as known at an instant")
	@ApiResponse(responseCode = "200", description = "The file",
			content = @Content(mediaType = CSV, schema = @Schema(type = "string")))
	@Nullable ResponseEntity<Resource> standings(@PathVariable String county,
			@RequestParam(required = false) @Nullable LocalDate asOf,
			@RequestParam(required = false) @Nullable String knownAt, HttpServletRequest request,
			HttpServletResponse response) throws IOException {
		this.counties.get(county);
		Instant known = this.answers.instant(county, knownAt);
		return give(request, response, county + "-standings.csv", CSV_SENT,
				(to) -> this.export.standings(county, asOf, known, to));
	}

	@GetMapping(path = "/exports/{county}/trees.csv", produces = CSV)
	@Access(Who.ANYONE)
	@Operation(operationId = "exportTrees", summary = "The listed trees of a county as CSV, as they are shown today")
	@ApiResponse(responseCode = "200", description = "The file",
			content = @Content(mediaType = CSV, schema = @Schema(type = "string")))
	@Nullable ResponseEntity<Resource> trees(@PathVariable String county, HttpServletRequest request,
			HttpServletResponse response) throws IOException {
		this.counties.get(county);
		return give(request, response, county + "-trees.csv", CSV_SENT, (to) -> this.export.trees(county, to));
	}

	@GetMapping(path = "/exports/{county}/scores.csv", produces = CSV)
	@Access(Who.ANYONE)
	@Operation(operationId = "exportScores",
			summary = "The score histories of the listed trees of a county as CSV, withdrawn scores among them")
	@ApiResponse(responseCode = "200", description = "The file",
			content = @Content(mediaType = CSV, schema = @Schema(type = "string")))
	@Nullable ResponseEntity<Resource> scores(@PathVariable String county, HttpServletRequest request,
			HttpServletResponse response) throws IOException {
		this.counties.get(county);
		return give(request, response, county + "-scores.csv", CSV_SENT, (to) -> this.export.scores(county, to));
	}

	@GetMapping(path = "/exports/{county}/trees.geojson", produces = GEO_JSON)
	@Access(Who.ANYONE)
	@Operation(operationId = "exportTreesOnMap",
			summary = "The listed trees of a county as GeoJSON (RFC 7946), each where it is shown to stand")
	@ApiResponse(responseCode = "200", description = "The file",
			content = @Content(mediaType = GEO_JSON, schema = @Schema(type = "object")))
	@Nullable ResponseEntity<Resource> geoJson(@PathVariable String county, HttpServletRequest request,
			HttpServletResponse response) throws IOException {
		this.counties.get(county);
		return give(request, response, county + "-trees.geojson", GEO_JSON, (to) -> this.export.geoJson(county, to));
	}

	@GetMapping(path = "/exports/{county}/dwca.zip", produces = ZIP)
	@Access(Who.ANYONE)
	@Operation(operationId = "exportArchive",
			summary = "The listed trees of a county and their figures as a Darwin Core archive")
	@ApiResponse(responseCode = "200", description = "The file",
			content = @Content(mediaType = ZIP, schema = @Schema(type = "string", format = "binary")))
	@Nullable ResponseEntity<Resource> archive(@PathVariable String county, HttpServletRequest request,
			HttpServletResponse response) throws IOException {
		ReadCounties.County found = this.counties.get(county);
		String page = this.files.addresses().of("/counties/" + county);
		return this.files.give(new ServletWebRequest(request, response), county + "-dwca.zip", ZIP,
				(to) -> this.archive.write(found, page, to));
	}

	private @Nullable ResponseEntity<Resource> give(HttpServletRequest request, HttpServletResponse response,
			String name, String type, Text text) throws IOException {
		return this.files.give(new ServletWebRequest(request, response), name, type, (to) -> {
			Writer writer = new BufferedWriter(new OutputStreamWriter(to, StandardCharsets.UTF_8));
			text.write(writer);
			writer.flush();
		});
	}

	/**
	 * What writes text.
	 */
	private interface Text {

		void write(Writer to) throws IOException;

	}

}
