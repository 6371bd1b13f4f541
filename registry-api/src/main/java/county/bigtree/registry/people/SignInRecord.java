package county.bigtree.registry.people;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.registry.id.Uuid7;
import org.jspecify.annotations.Nullable;

import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Records what happens at the door, and by that record holds back who fails too often. An
 * attempt counts as failed from before the password is looked at, so that many at once
 * can't slip past the limit on any node.
 */
@Component
@EnableConfigurationProperties(SignInLimits.class)
class SignInRecord {

	private static final Duration QUARTER_HOUR = Duration.ofMinutes(15);

	private static final Duration HOUR = Duration.ofHours(1);

	private final JdbcClient jdbc;

	private final SignInLimits limits;

	private final Clock clock;

	SignInRecord(JdbcClient jdbc, SignInLimits limits, Clock clock) {
		this.jdbc = jdbc;
		this.limits = limits;
		this.clock = clock;
	}

	/** What an e-mail address is known by here. */
	static byte[] account(String email) {
		return Secret.hash(email.strip().toLowerCase(Locale.ROOT));
	}

	/**
	 * Begins an attempt, in a transaction of its own.
	 */
	@Transactional(propagation = Propagation.REQUIRES_NEW)
	public Attempt begin(byte[] account, String network) {
		Instant now = this.clock.instant();
		lock("account " + java.util.HexFormat.of().formatHex(account));
		lock("network " + network);
		Optional<Instant> until = heldBackUntil(account, network, now);
		if (until.isPresent()) {
			noteHeldBack(account, network, now);
			return new Attempt(null, Duration.between(now, until.get()));
		}
		return new Attempt(insert(SignInEvent.FAILED, null, account, network, now), Duration.ZERO);
	}

	/** Says that the attempt did not fail, and what it was for. */
	void succeeded(Attempt attempt, UUID person, SignInEvent event) {
		this.jdbc.sql("update sign_in_event set event = ?, person = ? where id = ?")
			.params(event.code(), person, Objects.requireNonNull(attempt.id(), "a begun attempt has an id"))
			.update();
	}

	/** What failed at an address is nobody's any more once the address is. */
	void forget(byte[] account) {
		this.jdbc.sql("delete from sign_in_event where account = ? and person is null").param(account).update();
	}

	void note(SignInEvent event, UUID person, String network) {
		insert(event, person, null, network, this.clock.instant());
	}

	private UUID insert(SignInEvent event, @Nullable UUID person, byte @Nullable [] account, String network,
			Instant now) {
		UUID id = Uuid7.next();
		this.jdbc.sql("""
				insert into sign_in_event (id, happened_at, event, person, account, client_network)
				values (:id, :at, :event, :person, :account, :network)""")
			.param("id", id)
			.param("at", now.atOffset(ZoneOffset.UTC))
			.param("event", event.code())
			.param("person", person, java.sql.Types.OTHER)
			.param("account", account, java.sql.Types.BINARY)
			.param("network", network)
			.update();
		return id;
	}

	/** Once a minute: who hammers shall not fill the table. */
	private void noteHeldBack(byte[] account, String network, Instant now) {
		boolean noted = this.jdbc.sql("""
				select exists (select from sign_in_event where account = :account and client_network = :network
					and event = 'held-back' and happened_at > :since)""")
			.param("account", account)
			.param("network", network)
			.param("since", now.minus(Duration.ofMinutes(1)).atOffset(ZoneOffset.UTC))
			.query(Boolean.class)
			.single();
		if (!noted) {
			insert(SignInEvent.HELD_BACK, null, account, network, now);
		}
	}

	private Optional<Instant> heldBackUntil(byte[] account, String network, Instant now) {
		return Stream.of(
				over("""
						account = :account and client_network = :network and happened_at > coalesce((
							select max(happened_at) from sign_in_event where account = :account and client_network = :network
								and event not in ('failed', 'held-back')), '-infinity')""",
						account, network, this.limits.failuresHere(), QUARTER_HOUR, now),
				over("account = :account", account, network, this.limits.failuresOfAccount(), HOUR, now),
				over("client_network = :network", account, network, this.limits.failuresOfNetwork(), HOUR, now))
			.flatMap(Optional::stream)
			.max(Instant::compareTo);
	}

	/** When the failure that is one too many will be far enough back. */
	private Optional<Instant> over(String which, byte[] account, String network, int most, Duration within,
			Instant now) {
		return this.jdbc
			.sql("select happened_at from sign_in_event where event = 'failed' and happened_at > :since and " + which
					+ " order by happened_at desc offset :before limit 1")
			.param("account", account)
			.param("network", network)
			.param("since", now.minus(within).atOffset(ZoneOffset.UTC))
			.param("before", most - 1)
			.query((row, number) -> row.getObject(1, java.time.OffsetDateTime.class).toInstant().plus(within))
			.optional();
	}

	private void lock(String name) {
		this.jdbc.sql("select pg_advisory_xact_lock(hashtextextended(:name, 0))")
			.param("name", name)
			.query((row, number) -> 0)
			.single();
	}

	/**
	 * An attempt that has begun.
	 *
	 * @param id null where it was held back
	 * @param pause how long nothing more is looked at
	 */
	record Attempt(@Nullable UUID id, Duration pause) {

		boolean isHeldBack() {
			return this.id == null;
		}

	}

}
