package county.bigtree.registry.notice;

import java.time.Duration;
import java.util.concurrent.TimeUnit;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * What every node does about notices by the clock.
 */
@Component
class NoticeRuns {

	/** For so long they stand on the pages. */
	static final int DAYS_KEPT = 180;

	private static final Logger logger = LoggerFactory.getLogger(NoticeRuns.class);

	private final SendNotices send;

	private final StuckNotices stuck;

	private final CalendarNotices calendar;

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	private int knownStuck;

	NoticeRuns(SendNotices send, StuckNotices stuck, CalendarNotices calendar, JdbcClient jdbc, RegisterClock clock) {
		this.send = send;
		this.stuck = stuck;
		this.calendar = calendar;
		this.jdbc = jdbc;
		this.clock = clock;
	}

	@Scheduled(initialDelay = 15, fixedDelay = 15, timeUnit = TimeUnit.SECONDS)
	void send() {
		try {
			if (!"off".equals(this.stuck.state())) {
				this.send.run();
				tellIfStuck(this.stuck.count());
			}
		}
		catch (DataAccessException ex) {
			logger.warn("Notices wait for the database: {}", ex.getClass().getSimpleName());
		}
	}

	private void tellIfStuck(int count) {
		if (count > this.knownStuck) {
			logger.error("Notices are stuck: {} could not be sent for half an hour or more", count);
		}
		else if (count == 0 && this.knownStuck > 0) {
			logger.info("Notices flow again");
		}
		this.knownStuck = count;
	}

	@Scheduled(cron = "0 23 * * * *", zone = "UTC")
	void calendar() {
		for (String county : this.jdbc.sql("select key from county order by key").query(String.class).list()) {
			try {
				this.calendar.queue(county);
			}
			catch (DataAccessException ex) {
				logger.error("The notices of the calendar failed in county {}", county, ex);
			}
		}
	}

	/**
	 * Old ones go; what nobody tried to send while it was news stands on the pages only.
	 */
	@Scheduled(cron = "0 37 3 * * *", zone = "UTC")
	@Transactional
	void forget() {
		this.jdbc.sql("delete from notice where queued_at < ? and next_try_at < ?")
			.params(SqlTime.of(this.clock.now().minus(Duration.ofDays(DAYS_KEPT))), SqlTime.of(this.clock.now()))
			.update();
		this.jdbc.sql("update notice set mail = 'none' where mail = 'waiting' and tries = 0 and next_try_at < ?")
			.param(SqlTime.of(this.clock.now().minus(Outbox.OLD_NEWS)))
			.update();
	}

}
