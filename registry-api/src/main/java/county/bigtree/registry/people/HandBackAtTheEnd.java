package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.problem.Contention;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Once an hour, on whichever node: hands back what people have open whose time as
 * verifiers of a county ran out by itself. It is recorded as done by whoever gave the
 * role, and found again next time if others were writing.
 */
@Component
class HandBackAtTheEnd {

	private static final Logger log = LoggerFactory.getLogger(HandBackAtTheEnd.class);

	private static final Duration LOOKED_BACK = Duration.ofDays(30);

	private final JdbcClient jdbc;

	private final List<AssignedWork> openWork;

	private final TransactionTemplate transactions;

	private final Clock clock;

	HandBackAtTheEnd(JdbcClient jdbc, List<AssignedWork> openWork, TransactionTemplate transactions, Clock clock) {
		this.jdbc = jdbc;
		this.openWork = openWork;
		this.transactions = transactions;
		this.clock = clock;
	}

	@Scheduled(cron = "0 7 * * * *", zone = "UTC")
	void handBack() {
		for (Ended ended : ended(this.clock.instant())) {
			try {
				this.transactions.executeWithoutResult((status) -> this.openWork.forEach((work) -> work.handBack(
						new AssignedWork.Leaving(ended.person(), ended.county(), ended.by(), "Their role ended."))));
			}
			catch (RuntimeException ex) {
				if (!Contention.caused(ex)) {
					log.error("What {} has open in {} could not be handed back", ended.person(), ended.county(), ex);
				}
			}
		}
	}

	private List<Ended> ended(Instant now) {
		return this.jdbc.sql("""
				select r.person, r.county,
					(array_agg(coalesce(r.ended_by, r.given_by, r.person) order by r.until_at desc))[1] as by
				from role_assignment r
				where r.role in ('verifier', 'coordinator') and r.until_at <= :now and r.until_at > :since
					and not exists (select from role_assignment held where held.person = r.person
						and held.county = r.county and held.role in ('verifier', 'coordinator')
						and held.from_at <= :now and (held.until_at is null or held.until_at > :now))
				group by r.county, r.person order by r.county, r.person""")
			.param("now", now.atOffset(ZoneOffset.UTC))
			.param("since", now.minus(LOOKED_BACK).atOffset(ZoneOffset.UTC))
			.query(Ended.class)
			.list();
	}

	private record Ended(UUID person, String county, UUID by) {
	}

}
