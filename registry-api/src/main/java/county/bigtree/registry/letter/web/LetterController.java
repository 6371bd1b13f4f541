package county.bigtree.registry.letter.web;

import java.net.URI;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.letter.DecideLetter;
import county.bigtree.registry.letter.Letter;
import county.bigtree.registry.letter.LetterBody;
import county.bigtree.registry.letter.LetterOutcomeBody;
import county.bigtree.registry.letter.Letters;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.ReadStandings;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Letters to counties.
 */
@RestController
@Tag(name = "Letters", description = "What anybody writes to a county, and what became of it.")
class LetterController {

	private static final String LETTERS = "letters";

	private final Letters letters;

	private final DecideLetter deciding;

	private final ReadStandings counties;

	LetterController(Letters letters, DecideLetter deciding, ReadStandings counties) {
		this.letters = letters;
		this.deciding = deciding;
		this.counties = counties;
	}

	@PostMapping("/api/v1/counties/{county}/letters")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.ANYONE)
	@Operation(operationId = "writeLetter",
			summary = "Write to a county: a tip, a doubt, that a tree fell, a wish about one's own data; only its coordinators read it")
	ResponseEntity<Letters.Received> write(@PathVariable String county, @RequestBody @Valid LetterBody body,
			@Nullable Actor actor) {
		requireCounty(county);
		Letters.Received received = this.letters.receive(actor, county, body);
		return ResponseEntity.created(URI.create("/api/v1/letters/" + received.id())).body(received);
	}

	@GetMapping("/api/v1/counties/{county}/letters")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listLetters", summary = "The letters to a county, the oldest first")
	Page<Letter> list(@PathVariable String county, @RequestParam(required = false) @Nullable Boolean open,
			Paging paging) {
		requireCounty(county);
		UUID after = paging.cursor(LETTERS, 1).map((cursor) -> cursor.uuid(0)).orElse(new UUID(0, 0));
		return Page.cut(this.letters.of(county, open, after, paging.oneMore()), paging, (letter) -> letter,
				(last) -> Cursor.of(LETTERS, last.id()));
	}

	@GetMapping("/api/v1/letters/{id}")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getLetter",
			summary = "A letter with how to reach who wrote it; that it was opened is noted")
	Letter get(@PathVariable UUID id, Actor actor) {
		return this.letters.open(actor, id);
	}

	@PostMapping("/api/v1/letters/{id}/outcome")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "decideLetter",
			summary = "Tell, once, what becomes of a letter: a nomination, a report, a visit or a correction is made of it in the same step")
	Letter decide(@PathVariable UUID id, @RequestBody @Valid LetterOutcomeBody body, Actor actor) {
		this.deciding.decide(actor, id, body);
		return this.letters.open(actor, id);
	}

	private void requireCounty(String county) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
	}

}
