package county.bigtree.registry.standing;

import java.lang.reflect.Proxy;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.db.TestDatabase;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.SqlTime;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.postgresql.util.PSQLException;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * Two nodes on one database write about the same trees at the same time. What they leave
 * must be as whole as what one would, and what a third reader was told must stay true.
 */
class RacingNodesIT {

	private static final int WRITERS = 4;

	private static final int CHANGES = 70;

	private static final String[] COUNTIES = { "racing-east", "racing-west" };

	private static final String SPECIES = "probatio-prima";

	private static final String[] SPECIES_OF_ALL = { SPECIES, "probatio-altera" };

	private TestDatabase database;

	private final List<UUID> trees = new CopyOnWriteArrayList<>();

	private final List<Known.Visit> visits = new CopyOnWriteArrayList<>();

	private final Map<Instant, String> acknowledged = new ConcurrentHashMap<>();

	@BeforeEach
	void makeDatabase() {
		this.database = TestDatabase.migrated();
	}

	@AfterEach
	void dropDatabase() {
		this.database.close();
	}

	@Test
	void leaveOneSpeciesOfOneCountyWhole() throws Exception {
		race(1, (context) -> {
		});
	}

	@Test
	void leaveTwoCountiesWholeThoughTreesGoBothWays() throws Exception {
		race(2, (context) -> {
		});
	}

	/**
	 * The race is close enough to matter: without the lock on the head it ends badly.
	 */
	@Test
	void wouldNotWithoutTheHeadsLock() {
		assertThatThrownBy(() -> race(1,
				(context) -> context
					.addBeanFactoryPostProcessor((factory) -> factory.addBeanPostProcessor(new WithoutHeadLock()))))
			.hasRootCauseInstanceOf(PSQLException.class)
			.hasStackTraceContaining("change_pk");
	}

	private void race(int counties, Consumer<AnnotationConfigApplicationContext> faults) throws Exception {
		try (StandingFixture one = new StandingFixture(this.database.service(), faults);
				StandingFixture other = new StandingFixture(this.database.service(), faults)) {
			one.begin(SPECIES_OF_ALL);
			for (int index = 0; index < 2; index++) {
				one.county(COUNTIES[index], (index == 0) ? "RE" : "RW", "America/Chicago",
						Rulebook.defaults(Rulebook.BEGINNING));
			}
			List<Asked> asked = new CopyOnWriteArrayList<>();
			List<Callable<Integer>> work = new ArrayList<>();
			for (int writer = 0; writer < WRITERS; writer++) {
				StandingFixture node = (writer % 2 == 0) ? one : other;
				Random random = new Random(writer);
				work.add(() -> write(node, random, counties));
			}
			work.add(() -> read(one, asked));
			run(work);
			assertThat(whole(one)).isEmpty();
			assertThat(recorded(one)).containsExactlyInAnyOrderElementsOf(this.acknowledged.keySet());
			assertThat(asked).hasSizeGreaterThan(10)
				.allSatisfy((before) -> assertThat(before.askAgain(one)).isEqualTo(before.answer()));
		}
	}

	private static void run(List<Callable<Integer>> work) throws Exception {
		ExecutorService threads = Executors.newFixedThreadPool(work.size());
		try {
			for (Future<Integer> done : threads.invokeAll(work)) {
				assertThat(done.get()).isPositive();
			}
		}
		finally {
			threads.shutdownNow();
		}
	}

	private int write(StandingFixture node, Random random, int counties) {
		int done = 0;
		while (done < CHANGES) {
			done += StandingFixture.unlessMoved(() -> change(node, random, counties)) ? 1 : 0;
		}
		return done;
	}

	private void change(StandingFixture node, Random random, int counties) {
		if (this.trees.size() < 6) {
			UUID tree = Uuid7.next();
			String county = COUNTIES[random.nextInt(counties)];
			acknowledge(node.tree(county, tree, SPECIES));
			acknowledge(node.accept(county, tree));
			this.trees.add(tree);
			return;
		}
		UUID tree = this.trees.get(random.nextInt(this.trees.size()));
		String county = node.standsIn(tree);
		int what = random.nextInt(100);
		if (what < 50 || this.visits.isEmpty()) {
			Known.Visit visit = new Known.Visit(Uuid7.next(), tree, LocalDate.now().minusDays(1 + random.nextInt(900)),
					new Known.Measures(110 + 0.5 * random.nextInt(14), 80.0, 40.0, 0.5), random.nextInt(4) > 0,
					CarryForward.NONE, FigureMethods.UNTOLD);
			acknowledge(node.measure(county, visit));
			this.visits.add(visit);
		}
		else if (what < 65 && counties == 2) {
			acknowledge(node.relocate(county, tree, county.equals(COUNTIES[0]) ? COUNTIES[1] : COUNTIES[0]));
		}
		else if (what < 72) {
			acknowledge(node.identify(county, tree, SPECIES_OF_ALL[random.nextInt(2)]));
		}
		else if (what < 80) {
			Condition condition = Condition.values()[random.nextInt(Condition.values().length)];
			acknowledge(node.condition(county,
					new Known.Seen(tree, condition, LocalDate.now().minusDays(1 + random.nextInt(300)), null)));
		}
		else {
			setAside(node, this.visits.get(random.nextInt(this.visits.size())));
		}
	}

	private void setAside(StandingFixture node, Known.Visit visit) {
		if (this.visits.remove(visit)) {
			acknowledge(node.setAside(node.standsIn(visit.tree()), visit.tree(), visit.id()));
		}
	}

	private void acknowledge(Instant at) {
		this.acknowledged.put(at, "acknowledged");
	}

	private int read(StandingFixture node, List<Asked> asked) {
		for (int question = 0; question < 40; question++) {
			BookKey book = new BookKey(COUNTIES[question % 2], SPECIES);
			node.transaction.executeWithoutResult((status) -> asked.add(ask(node, book)));
			Thread.yield();
		}
		return asked.size();
	}

	private static Asked ask(StandingFixture node, BookKey book) {
		AsOf asOf = new AsOf(LocalDate.now(), node.recordedThrough(book.county()), false);
		return new Asked(book, asOf, node.scores.ranked(book, asOf, null, 500));
	}

	private static List<String> whole(StandingFixture node) {
		List<String> wrong = new ArrayList<>();
		node.context.getBeansOfType(RegisterCheck.class)
			.values()
			.stream()
			.filter((check) -> !check.subject().matches("(pieces|witnesses|seals|titles changed).*"))
			.forEach((check) -> {
				Findings findings = new Findings(5, wrong::add, (looked) -> {
				});
				node.transaction.executeWithoutResult((status) -> check.look(findings));
				assertThat(findings.lookedAt()).as(check.subject()).isPositive();
			});
		return wrong;
	}

	/**
	 * The instants of all changes but the two that founded the counties; one that touches
	 * both counties has one instant.
	 */
	private static List<Instant> recorded(StandingFixture node) {
		return node.jdbc.sql("select distinct recorded_at from change where kind <> 'county-founded'")
			.query(OffsetDateTime.class)
			.list()
			.stream()
			.map(SqlTime::instant)
			.toList();
	}

	/**
	 * Reads a county's head without taking it.
	 */
	private static final class WithoutHeadLock implements BeanPostProcessor {

		@Override
		public Object postProcessAfterInitialization(Object bean, String name) {
			return (bean instanceof JdbcClient jdbc) ? Proxy.newProxyInstance(JdbcClient.class.getClassLoader(),
					new Class<?>[] { JdbcClient.class }, (proxy, method, arguments) -> {
						if (method.getName().equals("sql")) {
							arguments[0] = arguments[0].toString().replace("for no key update of h", "");
						}
						return method.invoke(jdbc, arguments);
					}) : bean;
		}

	}

	/**
	 * What a reader asked and was told.
	 */
	private record Asked(BookKey book, AsOf asOf, List<ScoredTree> answer) {

		List<ScoredTree> askAgain(StandingFixture node) {
			return node.scores.ranked(this.book, this.asOf, null, 500);
		}

	}

}
