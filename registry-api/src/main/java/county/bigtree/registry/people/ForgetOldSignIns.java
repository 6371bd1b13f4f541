package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Once a day, on whichever node: forgets what happened at the door more than
 * {@value #DAYS_KEPT} days ago.
 */
@Component
class ForgetOldSignIns {

	static final int DAYS_KEPT = 180;

	private final JdbcClient jdbc;

	private final Clock clock;

	ForgetOldSignIns(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	@Scheduled(cron = "0 27 3 * * *", zone = "UTC")
	@Transactional
	int forget() {
		return this.jdbc.sql("delete from sign_in_event where happened_at < ?")
			.param(this.clock.instant().minus(Duration.ofDays(DAYS_KEPT)).atOffset(ZoneOffset.UTC))
			.update();
	}

}
