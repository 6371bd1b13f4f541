package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lets a person who forgot the password choose another, by a secret that works once,
 * within {@value #HOURS} hours, and is handed to them by someone who may manage their
 * account. Until it is used the old password works; then all sessions and tokens end.
 */
@Component
public class ResetPassword {

	static final int HOURS = 24;

	private static final String PREFIX = "reset_";

	private final JdbcClient jdbc;

	private final People people;

	private final PasswordEncoder passwords;

	private final EndAccess endAccess;

	private final Clock clock;

	ResetPassword(JdbcClient jdbc, People people, PasswordEncoder passwords, EndAccess endAccess, Clock clock) {
		this.jdbc = jdbc;
		this.people = people;
		this.passwords = passwords;
		this.endAccess = endAccess;
		this.clock = clock;
	}

	/**
	 * Makes a secret, which takes the place of any made before.
	 * @param by who hands it over; null at the server's console
	 */
	@Transactional
	public Made make(UUID of, @Nullable UUID by, String network) {
		Instant now = this.clock.instant();
		end(of, now);
		String secret = Secret.make(PREFIX);
		Instant expires = now.plus(Duration.ofHours(HOURS));
		this.jdbc.sql("""
				insert into password_reset (id, person, hash, created_at, expires_at, made_by)
				values (:id, :person, :hash, :at, :expires, :by)""")
			.param("id", Uuid7.next())
			.param("person", of)
			.param("hash", Secret.hash(secret))
			.param("at", now.atOffset(ZoneOffset.UTC))
			.param("expires", expires.atOffset(ZoneOffset.UTC))
			.param("by", by, java.sql.Types.OTHER)
			.update();
		this.endAccess.record().note(SignInEvent.RESET_MADE, of, network);
		return new Made(secret, expires);
	}

	/** Makes one at the server's console, for an account that is open. */
	@Transactional
	public Optional<Made> makeAtConsole(String email) {
		return this.people.findByEmail(email)
			.filter(Person::isActive)
			.map((person) -> make(person.getId(), null, "console"));
	}

	/** Takes the new password of whoever has the secret. */
	@Transactional
	public void reset(String secret, String password, String network) {
		Instant now = this.clock.instant();
		UUID id = this.jdbc
			.sql("""
					select r.person from password_reset r where r.hash = :hash and r.ended_at is null and r.expires_at > :now
					for update""")
			.param("hash", Secret.hash(secret))
			.param("now", now.atOffset(ZoneOffset.UTC))
			.query(UUID.class)
			.optional()
			.orElseThrow(ResetPassword::unknown);
		Person person = this.people.findById(id).filter(Person::isActive).orElseThrow(ResetPassword::unknown);
		Password.require(password, "#/newPassword", List.of(person.email(), person.creditName()));
		person.changePassword(String.valueOf(this.passwords.encode(password)));
		end(id, now);
		this.endAccess.of(id, now);
		this.endAccess.record().note(SignInEvent.PASSWORD_RESET, id, network);
	}

	private void end(UUID person, Instant now) {
		this.jdbc.sql("update password_reset set ended_at = ? where person = ? and ended_at is null")
			.params(now.atOffset(ZoneOffset.UTC), person)
			.update();
	}

	private static Problem unknown() {
		return Problem.of(ProblemType.REFUSED, "This link is not known, was used already, or is too old.");
	}

	/**
	 * A secret just made.
	 *
	 * @param secret for the person, and nobody else
	 */
	public record Made(String secret, Instant expiresAt) {
	}

}
