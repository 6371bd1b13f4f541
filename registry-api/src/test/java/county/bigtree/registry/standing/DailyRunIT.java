package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import county.bigtree.db.TestDatabase;
import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.id.Uuid7;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What a day's run does in every county: time brings about what is due, and witnesses are
 * kept.
 */
class DailyRunIT {

	private static final String SPECIES = "probatio-prima";

	private static final List<String> COUNTIES = List.of("daily-east", "daily-west");

	/** Seen last on 1 May 2024: by the default rules a title is kept for twelve years. */
	private static final LocalDate MEASURED = LocalDate.of(2024, 5, 1);

	private static final Instant LATER = Instant.parse("2040-06-01T12:00:00Z");

	private TestDatabase database;

	private StandingFixture node;

	@BeforeEach
	void tellOfATreeInEachCounty() {
		this.database = TestDatabase.migrated();
		this.node = node();
		this.node.begin(SPECIES);
		for (String county : COUNTIES) {
			this.node.county(county, county.substring(6, 8).toUpperCase(), "America/Chicago",
					Rulebook.defaults(Rulebook.BEGINNING));
			UUID tree = Uuid7.next();
			this.node.tree(county, tree, SPECIES);
			this.node.accept(county, tree);
			this.node.measure(county, new Known.Visit(Uuid7.next(), tree, MEASURED,
					new Known.Measures(120.0, 80.0, 40.0, 0.5), true, CarryForward.NONE, FigureMethods.UNTOLD));
		}
	}

	@AfterEach
	void dropDatabase() {
		this.node.close();
		this.database.close();
	}

	@Test
	void endsInEveryCountyTheTitlesThatTimeHasEnded() {
		assertThat(titles("to_at is null")).isEqualTo(2);
		runOn(LATER);
		assertThat(titles("to_at is null")).isZero();
		assertThat(titles("to_at < timestamptz '2036-06-01Z' and to_at > timestamptz '2036-04-30Z'")).isEqualTo(2);
		assertThat(booksDue()).isZero();
	}

	@Test
	void leavesAloneWhatIsNotDue() {
		runOn(Instant.parse("2030-06-01T12:00:00Z"));
		assertThat(titles("to_at is null")).isEqualTo(2);
	}

	@Test
	void keepsWitnessesOfEveryCountyOnceADayThatCheckTrue() {
		runOn(LATER);
		long first = witnesses();
		assertThat(counties()).containsExactlyElementsOf(COUNTIES);
		runOn(LATER.plusSeconds(60));
		assertThat(witnesses()).isEqualTo(first);
		List<String> wrong = new ArrayList<>();
		Findings findings = new Findings(5, wrong::add, (looked) -> {
		});
		this.node.transaction
			.executeWithoutResult((status) -> this.node.context.getBean(WitnessCheck.class).look(findings));
		assertThat(wrong).isEmpty();
		assertThat(findings.lookedAt()).isEqualTo(first);
	}

	@Test
	void passesOverACountyWhoseWitnessesAnotherNodeIsKeeping() {
		KeepWitnesses witnesses = this.node.context.getBean(KeepWitnesses.class);
		try (StandingFixture other = node()) {
			this.node.transaction.executeWithoutResult((status) -> {
				assertThat(witnesses.keep("daily-east", MEASURED)).isPositive();
				KeepWitnesses others = other.context.getBean(KeepWitnesses.class);
				assertThat(others.keep("daily-east", MEASURED)).isZero();
				assertThat(others.keep("daily-west", MEASURED)).isPositive();
			});
		}
	}

	@Test
	void keepsThemOnceThoughTwoNodesRunTogether() throws Exception {
		try (StandingFixture other = node()) {
			List<Callable<Void>> runs = List.of(() -> run(this.node, LATER), () -> run(other, LATER));
			ExecutorService threads = Executors.newFixedThreadPool(2);
			try {
				for (Future<Void> done : threads.invokeAll(runs)) {
					done.get();
				}
			}
			finally {
				threads.shutdownNow();
			}
		}
		assertThat(titles("to_at is null")).isZero();
		assertThat(titles("to_at is not null")).isEqualTo(2);
		assertThat(counties()).containsExactlyElementsOf(COUNTIES);
		long kept = witnesses();
		runOn(LATER);
		assertThat(witnesses()).isEqualTo(kept);
	}

	@Test
	void goesOnWithTheOtherCountiesWhereOneFails() {
		try (StandingFixture other = node()) {
			this.node.jdbc.sql("alter role current_user set lock_timeout = '200ms'").update();
			try (StandingFixture impatient = node()) {
				other.transaction.executeWithoutResult((status) -> {
					other.jdbc.sql("select seq from county_head where county = 'daily-east' for no key update")
						.query(Long.class)
						.single();
					run(impatient, LATER);
				});
			}
		}
		assertThat(titles("to_at is null and county = 'daily-east'")).isEqualTo(1);
		assertThat(titles("to_at is null and county = 'daily-west'")).isZero();
		assertThat(counties()).containsExactly("daily-west");
	}

	private StandingFixture node() {
		return new StandingFixture(this.database.service(), (context) -> {
		});
	}

	private void runOn(Instant instant) {
		run(this.node, instant);
	}

	private static Void run(StandingFixture node, Instant instant) {
		return node.clock.replayAt(instant, () -> {
			node.context.getBean(DailyRun.class).run();
			return null;
		});
	}

	private long titles(String which) {
		return count("title_span where " + which);
	}

	private long booksDue() {
		return count("book where next_event_at <= timestamptz '" + LATER + "'");
	}

	private long witnesses() {
		return count("witness");
	}

	private long count(String what) {
		return this.node.jdbc.sql("select count(*) from " + what).query(Long.class).single();
	}

	private List<String> counties() {
		return this.node.jdbc.sql("select distinct county from witness order by 1").query(String.class).list();
	}

}
