package county.bigtree.registry.transfer.web;

import java.util.UUID;

import io.swagger.v3.oas.annotations.Parameter;
import org.springframework.web.bind.annotation.RequestParam;
import county.bigtree.registry.http.DryRun;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.transfer.EraseUntaken;
import county.bigtree.registry.transfer.ImportJobs;
import county.bigtree.registry.transfer.UnknownNames;
import county.bigtree.registry.transfer.WithdrawImport;
import county.bigtree.registry.transfer.web.ImportController.ImportJson;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * What is decided on an import after its end.
 */
@RestController
@Tag(name = "Imports", description = "Files of older records, taken into a county.")
class ImportDecisionController {

	private static final String NAMES = "unknown-names";

	private final ImportJobs jobs;

	private final UnknownNames names;

	private final WithdrawImport withdrawing;

	private final EraseUntaken erasing;

	ImportDecisionController(ImportJobs jobs, UnknownNames names, WithdrawImport withdrawing, EraseUntaken erasing) {
		this.jobs = jobs;
		this.names = names;
		this.withdrawing = withdrawing;
		this.erasing = erasing;
	}

	@GetMapping("/api/v1/imports/{id}/unknown-names")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listUnknownNames", summary = "Names that the catalogue lacks, with the rows that wait")
	Page<UnknownNames.UnknownName> names(@PathVariable UUID id, Paging paging, Actor actor) {
		String after = paging.cursor(NAMES, 1).map((cursor) -> cursor.string(0)).orElse("");
		return Page.cut(this.names.list(actor, id, after, paging.oneMore()), paging, (name) -> name,
				(last) -> Cursor.of(NAMES, last.name()));
	}

	@PostMapping("/api/v1/imports/{id}/unknown-names")
	@ResponseStatus(HttpStatus.ACCEPTED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "matchUnknownName", summary = "Say what a name means, for all its rows at once")
	ResponseEntity<ImportJson> match(@PathVariable UUID id, @RequestBody @Valid NameBody body, Actor actor) {
		this.names.match(actor, id, body.name(), body.species());
		return ResponseEntity.accepted().body(ImportJson.from(this.jobs.get(actor, id)));
	}

	@PostMapping("/api/v1/imports/{id}/withdrawal")
	@DryRun
	@ResponseStatus(HttpStatus.ACCEPTED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "withdrawImport", summary = "Take an import back whole")
	ResponseEntity<ImportJson> withdraw(@PathVariable UUID id, @RequestBody @Valid WithdrawalBody body, IfMatch ifMatch,
			@Parameter(hidden = true) @RequestParam(required = false, defaultValue = "false") boolean dryRun,
			Actor actor) {
		this.withdrawing.withdraw(actor, id, body.reason(), dryRun,
				(revision) -> ifMatch.require(revision, () -> ImportJson.from(this.jobs.get(actor, id))));
		return ResponseEntity.accepted().body(ImportJson.from(this.jobs.get(actor, id)));
	}

	@DeleteMapping("/api/v1/imports/{id}/untaken-rows")
	@Access(Who.COORDINATOR)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "eraseUntakenRows",
			summary = "Erase what is kept of rows that an import did not take; rows that wait are rejected")
	void erase(@PathVariable UUID id, Actor actor) {
		this.erasing.erase(actor, id);
	}

	/**
	 * What a name means.
	 *
	 * @param species key of a species, or of a genus
	 */
	record NameBody(@NotNull String name, @NotNull String species) {
	}

	/**
	 * Why an import is taken back.
	 */
	record WithdrawalBody(@NotBlank String reason) {
	}

}
