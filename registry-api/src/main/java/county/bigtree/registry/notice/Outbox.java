package county.bigtree.registry.notice;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.journal.SqlTime;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The notices that wait to be sent. Whoever takes one holds it locked to the end of the
 * transaction, and others pass it over: two nodes never send one at the same time, and
 * what a node that died had taken is free again.
 */
@Component
class Outbox {

	/**
	 * What has waited longer for its first try is old news, and stands on the pages only.
	 */
	static final Duration OLD_NEWS = Duration.ofDays(3);

	/** About two days, by the waits between them. */
	static final int MOST_TRIES = 15;

	/** Failed for good, or for half an hour. */
	static final String STUCK = "(n.mail = 'failed' or n.mail = 'waiting' and n.tries >= 5)";

	private static final Duration LONGEST_WAIT = Duration.ofHours(6);

	private final JdbcClient jdbc;

	private final int aDay;

	Outbox(JdbcClient jdbc, NoticeSettings settings) {
		this.jdbc = jdbc;
		this.aDay = settings.aDay();
	}

	/** Takes the one that has waited longest. */
	Optional<Taken> take(Instant now) {
		return this.jdbc
			.sql("""
					select n.id, n.tries, n.next_try_at < :old and n.tries = 0 as late, p.active, p.email, p.credit_name as name,
					  exists (select from notice_refusal where person = n.recipient and kind = n.kind) as refused,
					  (select count(*) from notice s where s.recipient = n.recipient and s.mail = 'sent' and s.sent_at > :day) >= :aDay as full
					from notice n join person p on p.id = n.recipient
					where n.mail = 'waiting' and n.next_try_at <= :now
					order by n.next_try_at limit 1 for update of n skip locked""")
			.param("now", SqlTime.of(now))
			.param("old", SqlTime.of(now.minus(OLD_NEWS)))
			.param("aDay", this.aDay)
			.param("day", SqlTime.of(now.minus(Duration.ofDays(1))))
			.query(Taken.class)
			.optional();
	}

	void sent(UUID id, Instant now) {
		this.jdbc
			.sql("update notice set mail = 'sent', sent_at = :now, tries = tries + 1, last_error = null where id = :id")
			.param("id", id)
			.param("now", SqlTime.of(now))
			.update();
	}

	/** Leaves it on the pages. */
	void drop(UUID id) {
		this.jdbc.sql("update notice set mail = 'none' where id = ?").param(id).update();
	}

	void postpone(UUID id, Instant until) {
		this.jdbc.sql("update notice set next_try_at = ? where id = ?").params(SqlTime.of(until), id).update();
	}

	/**
	 * Notes a failure, after which the wait is twice as long as before.
	 * @param error what kind of failure
	 */
	void failed(Taken taken, Instant now, String error) {
		int tries = taken.tries() + 1;
		this.jdbc.sql("""
				update notice set tries = :tries, next_try_at = :next, last_error = :error,
				  mail = case when :tries >= :most then 'failed' else 'waiting' end
				where id = :id and mail = 'waiting' and tries < :tries""")
			.param("id", taken.id())
			.param("tries", tries)
			.param("most", MOST_TRIES)
			.param("next", SqlTime.of(now.plus(waitAfter(tries))))
			.param("error", error)
			.update();
	}

	/** A minute after the first failure, doubled by each, six hours at most. */
	static Duration waitAfter(int tries) {
		Duration doubled = Duration.ofMinutes(1L << Math.min(tries - 1, 20));
		return (doubled.compareTo(LONGEST_WAIT) < 0) ? doubled : LONGEST_WAIT;
	}

	/**
	 * A notice that was taken, to be sent.
	 *
	 * @param late whether nobody tried to send it while it was news
	 * @param active whether the recipient's account is open
	 * @param refused whether the recipient doesn't want its kind by e-mail
	 * @param full whether the recipient got as many in the last 24 hours as one may
	 */
	record Taken(UUID id, int tries, boolean late, boolean active, String email, String name, boolean refused,
			boolean full) {

		boolean isForPagesOnly() {
			return this.late || !this.active || this.refused;
		}

	}

}
