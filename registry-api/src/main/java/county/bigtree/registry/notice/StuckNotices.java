package county.bigtree.registry.notice;

import java.util.List;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The notices that could not be sent for half an hour or more, for the administrator.
 */
@Service
public class StuckNotices {

	private final Notices notices;

	private final Mailing mailing;

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	StuckNotices(Notices notices, Mailing mailing, JdbcClient jdbc, RegisterClock clock) {
		this.notices = notices;
		this.mailing = mailing;
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/** In a word: off without a mail server, else stuck or flowing. */
	public String state() {
		if (!this.mailing.isOn()) {
			return "off";
		}
		return any() ? "stuck" : "flowing";
	}

	/** Whether there are any. */
	public boolean any() {
		return count() > 0;
	}

	public int count() {
		return this.jdbc.sql("select count(*) from notice n where " + Outbox.STUCK).query(Integer.class).single();
	}

	/** Oldest first. */
	@Transactional(readOnly = true)
	public List<Notice> list(int limit) {
		return this.notices.stuck(limit);
	}

	/**
	 * Has all of them tried again at once, as if for the first time.
	 * @return how many
	 */
	@Transactional
	public int retry() {
		return this.jdbc.sql("update notice n set mail = 'waiting', tries = 1, next_try_at = ? where " + Outbox.STUCK)
			.param(SqlTime.of(this.clock.now()))
			.update();
	}

	/**
	 * Leaves all of them on the pages.
	 * @return how many
	 */
	@Transactional
	public int dismiss() {
		return this.jdbc.sql("update notice n set mail = 'none' where " + Outbox.STUCK).update();
	}

}
