package county.bigtree.registry.transfer.web;

import java.io.IOException;
import java.net.URI;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.ReadStandings;
import county.bigtree.registry.transfer.ImportFiles;
import county.bigtree.registry.transfer.ImportJobs;
import county.bigtree.registry.transfer.MappingBody;
import county.bigtree.registry.transfer.web.ImportController.ImportJson;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.Part;
import jakarta.validation.Valid;

import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Files that are looked at, mapped and rehearsed before they are taken in.
 */
@RestController
@Tag(name = "Imports", description = "Files of older records, taken into a county.")
class ImportFileController {

	private final ImportFiles files;

	private final ImportJobs jobs;

	private final ReadStandings counties;

	ImportFileController(ImportFiles files, ImportJobs jobs, ReadStandings counties) {
		this.files = files;
		this.jobs = jobs;
		this.counties = counties;
	}

	@PostMapping(path = "/api/v1/counties/{county}/import-files", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "bringImportFile",
			summary = "Bring a CSV or XLSX file to be looked at and mapped first: its columns, first rows and a guess at what they mean")
	ResponseEntity<ImportFiles.Brought> bring(@PathVariable String county,
			@Parameter(schema = @Schema(type = "string", format = "binary")) @RequestPart("file") Part file,
			Actor actor) throws IOException {
		requireCounty(county);
		UUID id = this.files.bring(actor, county, file.getInputStream().readAllBytes());
		return ResponseEntity.created(URI.create("/api/v1/import-files/" + id)).body(this.files.get(actor, id));
	}

	@GetMapping("/api/v1/counties/{county}/import-files")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listImportFiles", summary = "Files that wait to be taken in, the latest first")
	Page<ImportFiles.Brought> list(@PathVariable String county) {
		requireCounty(county);
		return Page.whole(this.files.of(county));
	}

	@GetMapping("/api/v1/import-files/{id}")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getImportFile", summary = "A file that waits to be taken in")
	ImportFiles.Brought get(@PathVariable UUID id, Actor actor) {
		return this.files.get(actor, id);
	}

	@PostMapping("/api/v1/import-files/{id}/imports")
	@ResponseStatus(HttpStatus.ACCEPTED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "takeInImportFile",
			summary = "Take in or rehearse a file that waits; one that is taken in waits no longer")
	ResponseEntity<ImportJson> takeIn(@PathVariable UUID id, @RequestBody @Valid MappingBody mapping, Actor actor) {
		UUID job = this.files.takeIn(actor, id, mapping);
		return ResponseEntity.accepted()
			.location(URI.create("/api/v1/imports/" + job))
			.body(ImportJson.from(this.jobs.get(actor, job)));
	}

	@DeleteMapping("/api/v1/import-files/{id}")
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "throwImportFileAway", summary = "Throw away a file that waits to be taken in")
	void throwAway(@PathVariable UUID id, Actor actor) {
		this.files.throwAway(actor, id);
	}

	private void requireCounty(String county) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
	}

}
