package county.bigtree.registry.nomination.web;

import county.bigtree.registry.http.DryRun;
import java.net.URI;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.domain.review.NominationMove;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.check.FindingJson;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.measurement.MeasurementJson;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.nomination.FileNomination;
import county.bigtree.registry.nomination.MoveNomination;
import county.bigtree.registry.nomination.NominationBody;
import county.bigtree.registry.nomination.NominationBook;
import county.bigtree.registry.nomination.OpenFinder;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.ReadStandings;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
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
 * Nominations and their moves.
 */
@RestController
@Tag(name = "Nominations", description = "Trees proposed for the register, and each move on the way to their sign-off.")
class NominationController {

	private static final String NOMINATIONS = "nominations";

	private final FileNomination filing;

	private final MoveNomination moving;

	private final NominationBook book;

	private final ReadMeasurements measurements;

	private final ReadStandings counties;

	private final OpenFinder finders;

	NominationController(FileNomination filing, MoveNomination moving, NominationBook book,
			ReadMeasurements measurements, ReadStandings counties, OpenFinder finders) {
		this.finders = finders;
		this.filing = filing;
		this.moving = moving;
		this.book = book;
		this.measurements = measurements;
		this.counties = counties;
	}

	@PostMapping("/api/v1/counties/{county}/nominations")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "fileNomination", summary = "Nominate a tree")
	ResponseEntity<NominationJson> file(@PathVariable String county, @RequestBody @Valid NominationBody body,
			Actor actor) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		UUID id = this.filing.file(actor, county, body);
		return ResponseEntity.created(URI.create("/api/v1/nominations/" + id)).body(json(this.book.get(id)));
	}

	@GetMapping("/api/v1/nominations")
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "listNominations",
			summary = "One's own nominations, or those of a county for its verifiers")
	Page<NominationJson> list(@RequestParam(required = false) @Nullable String county,
			@RequestParam(required = false) @Nullable String status, @RequestParam(defaultValue = "false") boolean mine,
			Paging paging, Actor actor) {
		boolean all = county != null && actor.isVerifierIn(county) && !mine;
		UUID after = paging.cursor(NOMINATIONS, 1).map((cursor) -> cursor.uuid(0)).orElse(new UUID(0, 0));
		return Page.cut(this.book.list(county, status, all ? null : actor.id(), after, paging.oneMore()), paging,
				this::json, (last) -> Cursor.of(NOMINATIONS, last.id()));
	}

	@GetMapping("/api/v1/nominations/{id}")
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "getNomination", summary = "A nomination with every move made")
	NominationJson get(@PathVariable UUID id, Actor actor) {
		NominationBook.Nomination nomination = this.book.get(id);
		if (!this.book.mayRead(actor, nomination)) {
			throw unknown();
		}
		return json(nomination);
	}

	@PostMapping("/api/v1/nominations/{id}/moves")
	@DryRun
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "moveNomination", summary = "Move a nomination along")
	NominationJson move(@PathVariable UUID id, @RequestBody @Valid MoveBody body, IfMatch ifMatch, Actor actor) {
		visible(id, actor);
		NominationMove move = NominationMove.find(body.move())
			.filter((one) -> one != NominationMove.ACCEPT)
			.orElseThrow(() -> Problem.invalid("#/move", "unknown",
					"must be assign, reassign, hand-back, return, answer, lapse, decline, withdraw or reopen"));
		this.moving.move(actor, id, move, body.verifier(), body.reason(),
				(revision) -> ifMatch.require(revision, () -> json(this.book.get(id))));
		return json(this.book.get(id));
	}

	@GetMapping("/api/v1/nominations/{id}/filed-for")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getFiledFor",
			summary = "For whom a nomination was filed, for the county's coordinators; that it was read is noted")
	OpenFinder.Finder filedFor(@PathVariable UUID id, Actor actor) {
		return this.finders.open(actor, id);
	}

	private NominationBook.Nomination visible(UUID id, Actor actor) {
		NominationBook.Nomination nomination = this.book.get(id);
		if (!actor.id().equals(nomination.nominator()) && !actor.isVerifierIn(nomination.county())) {
			throw unknown();
		}
		return nomination;
	}

	private static Problem unknown() {
		return Problem.notFound("No nomination has this id.");
	}

	private NominationJson json(NominationBook.Nomination nomination) {
		ReadMeasurements.Measurement first = this.measurements.get(nomination.measurement());
		return NominationJson.from(nomination, this.measurements.json(first), this.book.moves(nomination.id()));
	}

	/**
	 * A move.
	 */
	record MoveBody(@NotNull String move, @Nullable UUID verifier, @Nullable String reason) {
	}

	/**
	 * A nomination.
	 *
	 * @param checks what the checks on it said, its questions answered
	 * @param lapsesOn the day on which it lapses unless it is answered, once that is
	 * near; else null
	 */
	record NominationJson(UUID id, String county, String status, UUID tree, String tag, @Nullable UUID verifier,
			String access, Instant recordedAt, MeasurementJson measurement, List<FindingJson> checks,
			List<NominationBook.Move> moves, @Nullable LocalDate lapsesOn,
			@JsonIgnore long revision) implements Revisioned {

		static NominationJson from(NominationBook.Nomination of, MeasurementJson measurement,
				List<NominationBook.Move> moves) {
			return new NominationJson(of.id(), of.county(), of.status(), of.tree(), of.tag(), of.verifier(),
					of.access(), of.recordedAt(), measurement, measurement.checks(), moves, of.lapsesOn(),
					of.revision());
		}

	}

}
