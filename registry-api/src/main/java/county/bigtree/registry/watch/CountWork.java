package county.bigtree.registry.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

import county.bigtree.registry.desk.ListDue;
import county.bigtree.registry.desk.ListQueue;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.notice.StuckNotices;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.upkeep.UpkeepRun;
import county.bigtree.registry.upkeep.UpkeepRuns;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/**
 * Counts the open work of all counties. Practice counties are left out: nobody has to do
 * their work.
 */
@Service
class CountWork {

	private final JdbcClient jdbc;

	private final ListQueue queue;

	private final ListDue due;

	private final RulesReader rules;

	private final StuckNotices notices;

	private final UpkeepRuns upkeep;

	private final RegisterClock clock;

	CountWork(JdbcClient jdbc, ListQueue queue, ListDue due, RulesReader rules, StuckNotices notices, UpkeepRuns upkeep,
			RegisterClock clock) {
		this.upkeep = upkeep;
		this.jdbc = jdbc;
		this.queue = queue;
		this.due = due;
		this.rules = rules;
		this.notices = notices;
		this.clock = clock;
	}

	Work count() {
		Instant now = this.clock.now();
		List<String> counties = this.jdbc.sql("select key from county where not practice").query(String.class).list();
		List<ListQueue.Load> loads = counties.stream().map(this.queue::load).toList();
		double oldest = loads.stream()
			.map(ListQueue.Load::since)
			.filter(Objects::nonNull)
			.mapToDouble((since) -> Duration.between(since, now).toMillis() / 1000.0)
			.max()
			.orElse(0);
		return new Work(loads.stream().mapToInt(ListQueue.Load::waiting).sum(), oldest,
				counties.stream().mapToInt((county) -> due(county, now)).sum(), this.notices.count(),
				age("archive", now), age("verify", now), age("trial", now));
	}

	private double age(String kind, Instant now) {
		return this.upkeep.lastWell(kind)
			.map(UpkeepRun::endedAt)
			.map((ended) -> Duration.between(ended, now).toMillis() / 1000.0)
			.orElse(Double.NaN);
	}

	private int due(String county, Instant now) {
		LocalDate tomorrow = this.rules.get(county).day(now).plusDays(1);
		return this.due.of(county, tomorrow).size();
	}

}
