package county.bigtree.registry.standing;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.db.TestDatabase;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What checks say of random histories, and what recomputing does to damaged ones.
 */
class RecomputeIT {

	private static final int HISTORIES = 25;

	private TestDatabase database;

	private StandingFixture register;

	private final List<RandomHistory> histories = new ArrayList<>();

	@BeforeEach
	void tellHistories() {
		this.database = TestDatabase.migrated();
		this.register = new StandingFixture(this.database.service(), (context) -> {
		});
		for (int seed = 0; seed < HISTORIES; seed++) {
			this.histories.add(new RandomHistory(9_000_000 + seed, this.register).play(12));
		}
	}

	@AfterEach
	void dropDatabase() {
		this.register.close();
		this.database.close();
	}

	@Test
	void checksFindHistoriesWholeAndRecomputingLeavesThemAlone() {
		assertThat(wrong()).isEmpty();
		long before = changes();
		assertThat(recompute()).isZero();
		assertThat(changes()).isEqualTo(before);
	}

	@ParameterizedTest
	@ValueSource(strings = { "delete from score where ends_on is null and withdrawn_at is null",
			"update score set points = points + 7 where withdrawn_at is null and ends_on is null", """
					update score set withdrawn_at = recorded_at + interval '1 microsecond', withdrawn = 'mistake'
					where ends_on is null and withdrawn_at is null""",
			"update score set may_hold = not may_hold where ends_on is null",
			"update score set turns_on = null where ends_on is null", "update book set trees = trees + 1",
			"delete from book where trees > 0", "update book set next_event_at = null",
			"delete from title_span where to_at is null",
			"update title_span set title = 'co-champion' where to_at is null" })
	void puttingInOrderLeavesNothingWrongButWhatWasToldBefore(String damage) {
		damage(damage);
		assertThat(wrong()).isNotEmpty();
		assertThat(recompute()).isPositive();
		assertThat(wrong()).isEmpty();
		assertThat(recompute()).isZero();
		assertThat(this.histories).allSatisfy((history) -> assertThat(standsAsTold(history)).isTrue());
	}

	/**
	 * As the oracle says for today; the titles of the past are what was recognised.
	 */
	private boolean standsAsTold(RandomHistory history) {
		return new HistoryCheck(history, this.register).differenceToday().isEmpty();
	}

	private void damage(String sql) {
		JdbcClient owner = JdbcClient.create(this.database.owner().dataSource());
		Stream.of("score", "title_span")
			.forEach((table) -> owner.sql("alter table " + table + " disable trigger user").update());
		assertThat(owner.sql(sql).update()).isPositive();
		Stream.of("score", "title_span")
			.forEach((table) -> owner.sql("alter table " + table + " enable trigger user").update());
	}

	private int recompute() {
		return this.histories.stream().mapToInt(this::recompute).sum();
	}

	private int recompute(RandomHistory history) {
		Recompute recompute = this.register.context.getBean(Recompute.class);
		return this.register.clock.replayAt(history.now(), () -> {
			int mended = 0;
			for (UUID tree : history.trees()) {
				mended += recompute.tree(tree) ? 1 : 0;
			}
			for (String county : history.counties) {
				for (BookKey book : recompute.books(county)) {
					mended += recompute.book(book) ? 1 : 0;
				}
			}
			return mended;
		});
	}

	private List<String> wrong() {
		List<String> wrong = new ArrayList<>();
		for (Class<? extends RegisterCheck> check : List.of(ScoreCheck.class, TitleCheck.class)) {
			Findings findings = new Findings(Integer.MAX_VALUE, (sentence) -> {
				if (!sentence.startsWith("Mended since")) {
					wrong.add(sentence);
				}
			}, (looked) -> {
			});
			this.register.context.getBean(check).look(findings);
			assertThat(findings.lookedAt()).isPositive();
		}
		return wrong;
	}

	private long changes() {
		return this.register.jdbc.sql("select count(*) from change").query(Long.class).single();
	}

}
