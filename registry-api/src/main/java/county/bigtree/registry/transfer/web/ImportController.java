package county.bigtree.registry.transfer.web;

import java.io.IOException;
import java.math.BigDecimal;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.http.StorableText;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.ReadStandings;
import county.bigtree.registry.transfer.ImportJob;
import county.bigtree.registry.transfer.ImportJobs;
import county.bigtree.registry.transfer.MappingBody;
import county.bigtree.registry.transfer.RejectedRows;
import county.bigtree.registry.transfer.StartImport;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.Part;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.http.server.ServletServerHttpRequest;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Files of older records, taken into a county.
 */
@RestController
@Tag(name = "Imports", description = "Files of older records, taken into a county.")
class ImportController {

	private static final String IMPORTS = "imports";

	private static final String NOTES = "import-notes";

	private static final MediaType CSV = new MediaType("text", "csv", StandardCharsets.UTF_8);

	private final StartImport starting;

	private final ImportJobs jobs;

	private final RejectedRows rejectedRows;

	private final ReadStandings counties;

	private final JsonMapper json;

	ImportController(StartImport starting, ImportJobs jobs, RejectedRows rejectedRows, ReadStandings counties,
			JsonMapper json) {
		this.starting = starting;
		this.jobs = jobs;
		this.rejectedRows = rejectedRows;
		this.counties = counties;
		this.json = json;
	}

	@PostMapping(path = "/api/v1/counties/{county}/imports", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
	@ResponseStatus(HttpStatus.ACCEPTED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "startImport",
			summary = "Take in a CSV or XLSX file of an older record, its columns as the mapping says")
	ResponseEntity<ImportJson> start(@PathVariable String county,
			@Parameter(schema = @Schema(type = "string", format = "binary")) @RequestPart("file") Part file,
			@Parameter(schema = @Schema(implementation = MappingBody.class)) @RequestPart("mapping") Part mapping,
			HttpServletRequest request, Actor actor) throws IOException {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		UUID id = this.starting.start(actor, county, file.getInputStream().readAllBytes(), read(mapping, request));
		return ResponseEntity.accepted().location(URI.create("/api/v1/imports/" + id)).body(get(id, actor));
	}

	@GetMapping("/api/v1/counties/{county}/imports")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listImports", summary = "The imports of a county, dry runs included, the latest first")
	Page<ImportJson> list(@PathVariable String county, Paging paging) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		UUID before = paging.cursor(IMPORTS, 1).map((cursor) -> cursor.uuid(0)).orElse(null);
		return Page.cut(this.jobs.of(county, before, paging.oneMore()), paging, ImportJson::from,
				(last) -> Cursor.of(IMPORTS, last.id()));
	}

	@GetMapping("/api/v1/imports/{id}")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getImport", summary = "How far an import has come")
	ImportJson get(@PathVariable UUID id, Actor actor) {
		return ImportJson.from(this.jobs.get(actor, id));
	}

	@GetMapping("/api/v1/imports/{id}/notes")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listImportNotes", summary = "What is to be told of rows that an import took")
	Page<ImportJobs.Note> notes(@PathVariable UUID id, Paging paging, Actor actor) {
		long after = paging.cursor(NOTES, 1).map((cursor) -> cursor.number(0)).orElse(0L);
		return Page.cut(this.jobs.notes(actor, id, after, paging.oneMore()), paging, (note) -> note,
				(last) -> Cursor.of(NOTES, (long) last.row()));
	}

	@GetMapping(path = "/api/v1/imports/{id}/rejected.csv", produces = "text/csv")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getRejectedRows", summary = "The rows that an import rejected, each with its reason")
	ResponseEntity<byte[]> rejected(@PathVariable UUID id, Actor actor) {
		return ResponseEntity.ok()
			.contentType(CSV)
			.header(HttpHeaders.CONTENT_DISPOSITION,
					ContentDisposition.attachment().filename("rejected.csv").build().toString())
			.body(this.rejectedRows.csv(actor, id).getBytes(StandardCharsets.UTF_8));
	}

	/** Of any content type: forms send JSON as plain text. */
	private MappingBody read(Part mapping, HttpServletRequest request) throws IOException {
		try {
			byte[] text = mapping.getInputStream().readAllBytes();
			StorableText.require(this.json, text);
			MappingBody body = this.json.readValue(text, MappingBody.class);
			if (body == null) {
				throw Problem.invalid("#", "wrong-type", "must be an object");
			}
			return body;
		}
		catch (JacksonException ex) {
			throw new HttpMessageNotReadableException("mapping", ex, new ServletServerHttpRequest(request));
		}
	}

	/**
	 * An import.
	 *
	 * @param accepted rows that brought a ranked tree
	 * @param kept rows that brought a tree which is not ranked: its name is only a genus,
	 * or it lacks figures
	 * @param changed rows that brought further figures, or a condition, to a tree of an
	 * earlier import
	 * @param waiting rows whose name the catalogue lacks: say what it means
	 * @param progress the share of the rows that have been worked through, 0 to 1
	 * @param failure why it failed, if it did
	 * @param notes how many rows that were taken have something to be told of
	 */
	record ImportJson(UUID id, String county, String status, boolean dryRun, int rows, int accepted, int kept,
			int changed, int waiting, int rejected, int alreadyImported, BigDecimal progress, @Nullable String failure,
			Instant createdAt, @Nullable Instant finishedAt, @Nullable Instant withdrawnAt, int notes,
			@JsonIgnore long revision) implements Revisioned {

		static ImportJson from(ImportJob job) {
			ImportJob.Counts counts = job.counts();
			return new ImportJson(job.id(), job.county(), job.status(), job.dryRun(), job.rowCount(), counts.accepted(),
					counts.kept(), counts.changed(), counts.waiting(), counts.rejected(), counts.alreadyImported(),
					job.progress(), job.failure(), job.createdAt(), job.finishedAt(), job.withdrawnAt(), job.notes(),
					job.revision());
		}

	}

}
