package county.bigtree.registry.standing;

import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;

import county.bigtree.db.TestDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Scores, standings and titles over thousands of random histories against an oracle that
 * knows no spans, no index and no increments. The number of histories is the system
 * property {@code registry.histories} (default 2000); the seeds are the first so many
 * whole numbers.
 */
class RandomHistoryIT {

	private static final long HISTORIES = Long.getLong("registry.histories", 2000);

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
		try (StandingFixture register = new StandingFixture(database.service(), (context) -> {
		})) {
			register.begin(RandomHistory.SPECIES);
			AtomicInteger told = new AtomicInteger();
			LongStream.range(0, HISTORIES).parallel().forEach((seed) -> {
				RandomHistory history = new RandomHistory(seed, register).play(12);
				assertThat(new HistoryCheck(history, register).difference(new Random(seed))).as("seed " + seed)
					.isEmpty();
				told.addAndGet(history.known.visits.size());
			});
			assertThat(told.get()).isGreaterThan((int) HISTORIES * 3);
		}
	}

}
