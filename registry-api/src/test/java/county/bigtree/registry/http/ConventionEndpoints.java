package county.bigtree.registry.http;

import java.net.URI;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import org.jspecify.annotations.Nullable;

import org.springframework.dao.CannotAcquireLockException;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.UncategorizedSQLException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Endpoints that exist only in tests, to show how the conventions treat any endpoint.
 * What is recorded is the asker's credit name.
 */
@RestController
@Hidden
@RequestMapping("/api/v1/convention-tests")
public class ConventionEndpoints {

	/** Calls that reached the controller, by the name sent. */
	static final Map<String, AtomicInteger> calls = new ConcurrentHashMap<>();

	private static final Map<String, CountDownLatch> latches = new ConcurrentHashMap<>();

	private final JdbcClient jdbc;

	ConventionEndpoints(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	@PostMapping("/things")
	@Access(Who.SIGNED_IN)
	ResponseEntity<Thing> make(@Valid @RequestBody Wanted wanted, @RequestParam(defaultValue = "false") boolean dryRun,
			Actor actor) throws Exception {
		int call = calls.computeIfAbsent(wanted.name(), (name) -> new AtomicInteger()).incrementAndGet();
		this.jdbc.sql("update person set credit_name = ? where id = ?").params(wanted.name(), actor.id()).update();
		switch (wanted.kind()) {
			case REFUSED -> throw Problem.of(ProblemType.REFUSED, "Not today.");
			case BROKEN_OFF -> throw new IllegalStateException("select secret from person");
			case SENT_BACK -> {
				return ResponseEntity.status(409).body(new Thing(wanted.name(), call, 1));
			}
			case CONTENDED -> contend(call);
			case ALWAYS_CONTENDED -> throw new CannotAcquireLockException("busy");
			case TWICE -> this.jdbc.sql("update person set email = 'taken@example.org' where true").update();
			case SLOW -> {
				entered(wanted.name()).countDown();
				released(wanted.name()).await(20, TimeUnit.SECONDS);
			}
			case PLAIN -> {
			}
		}
		return ResponseEntity.created(URI.create("/api/v1/convention-tests/things/" + wanted.name()))
			.body(new Thing(wanted.name(), call, 7));
	}

	/** Open once the controller is at work on the name. */
	static CountDownLatch entered(String name) {
		return latches.computeIfAbsent("entered " + name, (key) -> new CountDownLatch(1));
	}

	/** To be opened by the test, to let the controller go on. */
	static CountDownLatch released(String name) {
		return latches.computeIfAbsent("released " + name, (key) -> new CountDownLatch(1));
	}

	private static void contend(int call) {
		if (call < 3) {
			throw new UncategorizedSQLException("lock", null, new SQLException("lock not available", "55P03"));
		}
	}

	@GetMapping("/things/{thing}")
	@Access(Who.ANYONE)
	Thing thing(@PathVariable String thing) {
		return new Thing(thing, 0, 7);
	}

	@PostMapping("/things/{thing}/decision")
	@Access(Who.ANYONE)
	Thing decide(@PathVariable String thing, IfMatch ifMatch) {
		ifMatch.require(7, () -> new Thing(thing, 0, 7));
		return new Thing(thing, 0, 8);
	}

	@GetMapping("/numbers")
	@Access(Who.ANYONE)
	Page<Integer> numbers(@RequestParam(defaultValue = "7") int upTo, Paging paging) {
		int after = paging.cursor("numbers", 1).map((cursor) -> (int) cursor.number(0)).orElse(0);
		List<Integer> rows = IntStream.rangeClosed(after + 1, upTo).limit(paging.oneMore()).boxed().toList();
		return Page.cut(rows, paging, (row) -> row, (row) -> Cursor.of("numbers", row));
	}

	@PostMapping("/readings")
	@Unkeyed
	@Access(Who.ANYONE)
	Readings readings(@RequestBody Readings readings) {
		return readings;
	}

	@GetMapping("/identified/{id}")
	@Access(Who.ANYONE)
	UUID identified(@PathVariable UUID id) {
		return id;
	}

	@GetMapping("/counties/{county}/verifiers-only")
	@Access(Who.VERIFIER)
	String verifiersOnly(@PathVariable String county) {
		return county;
	}

	@GetMapping("/undeclared")
	String undeclared() {
		return "nobody sees this";
	}

	@GetMapping("/perhaps")
	@Access(Who.ANYONE)
	String perhaps(@Nullable Actor actor) {
		return (actor != null) ? "somebody" : "nobody";
	}

	enum Kind {

		PLAIN, REFUSED, BROKEN_OFF, SENT_BACK, CONTENDED, ALWAYS_CONTENDED, TWICE, SLOW

	}

	record Wanted(@NotBlank String name, @NotNull Kind kind, @Nullable @Max(10) Integer size) {

	}

	record Thing(String name, int call, long revision) implements Revisioned {

	}

	record Readings(Measurement measurement) {

	}

	record Measurement(GirthReading girth) {

	}

}
