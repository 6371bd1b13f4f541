package county.bigtree.registry.standing;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;

import county.bigtree.db.TestDatabase;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.dao.DataAccessException;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Scores, standings and titles over thousands of random histories against an oracle that
 * knows no spans, no index and no increments. The number of histories is the system
 * property {@code registry.histories} (default 2000); the seeds are the first so many
 * whole numbers.
 */
class RandomHistoryIT {

	private static final long HISTORIES = Long.getLong("registry.histories", 2000);

	private static final long HISTORIES_FOR_A_FAULT = 1000;

	private static TestDatabase database;

	@BeforeAll
	static void makeDatabase() {
		database = TestDatabase.migrated();
	}

	@AfterAll
	static void dropDatabase() {
		database.close();
	}

	@Test
	void everyHistoryStandsAsTheOracleSays() {
		try (TestDatabase whole = TestDatabase.migrated();
				StandingFixture register = new StandingFixture(whole.service(), (context) -> {
				})) {
			AtomicInteger told = new AtomicInteger();
			LongStream.range(0, HISTORIES).parallel().forEach((seed) -> {
				RandomHistory history = new RandomHistory(seed, register).play(12);
				assertThat(new HistoryCheck(history, register).difference(new Random(seed))).as("seed " + seed)
					.isEmpty();
				told.addAndGet(history.known.visits.size());
			});
			assertThat(told.get()).isGreaterThan((int) HISTORIES * 3);
			checksFindNothing(register);
		}
	}

	/**
	 * The third account of the same histories: what a verification says.
	 */
	private static void checksFindNothing(StandingFixture register) {
		register.context.getBeansOfType(RegisterCheck.class)
			.values()
			.stream()
			.filter((check) -> !check.subject().matches("(pieces|witnesses|seals).*"))
			.forEach((check) -> {
				List<String> found = new ArrayList<>();
				Findings findings = new Findings(10, found::add, (looked) -> {
				});
				register.transaction.executeWithoutResult((status) -> check.look(findings));
				assertThat(found).as(check.subject()).isEmpty();
				long few = check.subject().startsWith("titles changed") ? HISTORIES / 10 : HISTORIES;
				assertThat(findings.lookedAt()).as(check.subject()).isGreaterThan(few);
			});
	}

	/**
	 * A history that the schema's constraints or the recording itself refuse has found
	 * the fault as well.
	 */
	@ParameterizedTest
	@EnumSource
	void findsASeededFault(SeededFault fault) {
		try (StandingFixture register = new StandingFixture(database.service(), fault)) {
			long first = 1_000_000L * (1 + fault.ordinal());
			long found = LongStream.range(first, first + HISTORIES_FOR_A_FAULT)
				.filter((seed) -> finds(register, seed))
				.findFirst()
				.orElse(-1);
			assertThat(found).as("seed that found it").isNotNegative();
			System.out.println(fault + " found by history " + (found - first + 1));
		}
	}

	private static boolean finds(StandingFixture register, long seed) {
		try {
			RandomHistory history = new RandomHistory(seed, register).play(12);
			return new HistoryCheck(history, register).difference(new Random(seed)).isPresent();
		}
		catch (DataAccessException | IllegalStateException ex) {
			return true;
		}
	}

}
