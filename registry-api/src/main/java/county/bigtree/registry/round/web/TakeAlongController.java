package county.bigtree.registry.round.web;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.desk.Due;
import county.bigtree.registry.desk.ListDue;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.round.ReadRound;
import county.bigtree.registry.visit.Visits;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * A county's work in the field, to take along on other devices.
 */
@RestController
@Tag(name = "Visits", description = "Work for verifiers at a tree, and what came of it.")
class TakeAlongController {

	private static final UUID FIRST = new UUID(0, 0);

	private static final int MOST = 500;

	private final Rounds rounds;

	private final Visits visits;

	private final ListDue due;

	private final Writing writing;

	TakeAlongController(Rounds rounds, Visits visits, ListDue due, Writing writing) {
		this.rounds = rounds;
		this.visits = visits;
		this.due = due;
		this.writing = writing;
	}

	@GetMapping(path = "/exports/{county}/visits.gpx", produces = "application/gpx+xml")
	@Access(Who.VERIFIER)
	@Operation(operationId = "exportRound",
			summary = "The round of a county in GPX 1.1: waypoints and a route in its order; that exact places were read is noted")
	ResponseEntity<byte[]> gpx(@PathVariable String county, @RequestParam(defaultValue = "false") boolean mine,
			@RequestParam(defaultValue = "false") boolean due, @RequestParam(required = false) @Nullable String from,
			Actor actor) {
		ReadCounties.County named = this.rounds.open(county);
		ReadRound.Walked round = this.rounds.of(actor, county, mine, due, from);
		StopWords words = this.writing.words(round.stops().stream().map((stop) -> stop.tree().species()).toList());
		return file(county + "-visits.gpx", RoundInGpx.type(), new RoundInGpx(words, this.writing::address)
			.write(words.say("round.name", named.name()), this.writing.today(), round));
	}

	@GetMapping(path = "/exports/{county}/visits.ics", produces = "text/calendar")
	@Access(Who.VERIFIER)
	@Operation(operationId = "exportVisits",
			summary = "The days of a county's open visits for a calendar (RFC 5545), without places or people")
	ResponseEntity<byte[]> visits(@PathVariable String county, @RequestParam(defaultValue = "false") boolean mine,
			Actor actor) {
		this.rounds.open(county);
		List<Visits.Visit> open = this.visits.list(actor, county, mine, true, FIRST, MOST);
		return calendar(county + "-visits.ics", calendar(open.stream().map(Visits.Visit::species)).visits(open));
	}

	@GetMapping(path = "/exports/{county}/due.ics", produces = "text/calendar")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "exportDue",
			summary = "The days by which a county's leading trees are to be measured again, within a year, for a calendar (RFC 5545)")
	ResponseEntity<byte[]> due(@PathVariable String county) {
		this.rounds.open(county);
		List<Due> all = this.due.of(county, null);
		return calendar(county + "-due.ics", calendar(all.stream().map(Due::species)).due(all));
	}

	private DaysInCalendar calendar(Stream<String> species) {
		return new DaysInCalendar(this.writing.words(species.toList()), this.writing.today(), this.writing::address);
	}

	private static ResponseEntity<byte[]> calendar(String name, byte[] days) {
		return file(name, DaysInCalendar.type(), days);
	}

	private static ResponseEntity<byte[]> file(String name, String type, byte[] bytes) {
		return ResponseEntity.ok()
			.contentType(MediaType.parseMediaType(type))
			.header(HttpHeaders.CONTENT_DISPOSITION, ContentDisposition.attachment().filename(name).build().toString())
			.body(bytes);
	}

}
