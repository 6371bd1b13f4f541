package county.bigtree.registry.http;

import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The answers given to requests with a key. They are kept {@value #DAYS_KEPT} days: a
 * phone may come out of the woods late.
 */
@Component
class KeyedAnswers {

	static final int DAYS_KEPT = 30;

	private final JdbcClient jdbc;

	private final Clock clock;

	KeyedAnswers(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Holds the key until the transaction ends, and finds the answer that it is bound to.
	 * Throws where another request holds it now, and where it is bound to another body.
	 */
	Optional<KeyedAnswer> claim(RequestKey key) {
		String lock = key.account() + " " + key.method() + " " + key.path() + " " + key.key();
		boolean held = this.jdbc.sql("select pg_try_advisory_xact_lock(hashtextextended(:lock, 0))")
			.param("lock", lock)
			.query(Boolean.class)
			.single();
		if (!held) {
			throw Problem.of(ProblemType.IN_FLIGHT, "A request with this key is still being worked on.")
				.retryAfter(Duration.ofSeconds(1));
		}
		Optional<Bound> bound = find(key);
		if (bound.isPresent() && !key.asksTheSameAs(bound.get().requestHash())) {
			throw Problem.of(ProblemType.KEY_REUSED, "This key was used before with a different body.");
		}
		return bound.map(Bound::answer);
	}

	private Optional<Bound> find(RequestKey key) {
		return this.jdbc
			.sql("""
					select request_hash, status, content_type, location, revision, body from keyed_answer
					where account = :account and method = :method and path = :path and key = :key and answered_at > :since""")
			.param("account", key.account())
			.param("method", key.method())
			.param("path", key.path())
			.param("key", key.key())
			.param("since", oldestKept())
			.query((row, number) -> new Bound(row.getBytes("request_hash"),
					new KeyedAnswer(row.getInt("status"), row.getString("content_type"), row.getString("location"),
							row.getObject("revision", Long.class), row.getBytes("body"))))
			.optional();
	}

	void bind(RequestKey key, KeyedAnswer answer) {
		if (!insert(key, answer)) {
			// What is bound is older than answers are kept, and not yet dropped.
			this.jdbc.sql("delete from keyed_answer where account = ? and method = ? and path = ? and key = ?")
				.params(key.account(), key.method(), key.path(), key.key())
				.update();
			insert(key, answer);
		}
	}

	private boolean insert(RequestKey key, KeyedAnswer answer) {
		return this.jdbc.sql("""
				insert into keyed_answer
				(account, method, path, key, request_hash, status, content_type, location, revision, body, answered_at)
				values (:account, :method, :path, :key, :hash, :status, :type, :location, :revision, :body, :at)
				on conflict do nothing""")
			.param("account", key.account())
			.param("method", key.method())
			.param("path", key.path())
			.param("key", key.key())
			.param("hash", key.requestHash())
			.param("status", answer.status())
			.param("type", answer.contentType())
			.param("location", answer.location())
			.param("revision", answer.revision(), java.sql.Types.BIGINT)
			.param("body", answer.body())
			.param("at", this.clock.instant().atOffset(ZoneOffset.UTC))
			.update() == 1;
	}

	/** Drops what is too old to be asked for again. */
	int forgetOld() {
		return this.jdbc.sql("delete from keyed_answer where answered_at <= ?").param(oldestKept()).update();
	}

	private OffsetDateTime oldestKept() {
		return this.clock.instant().minus(Duration.ofDays(DAYS_KEPT)).atOffset(ZoneOffset.UTC);
	}

	private record Bound(byte[] requestHash, KeyedAnswer answer) {

	}

}
