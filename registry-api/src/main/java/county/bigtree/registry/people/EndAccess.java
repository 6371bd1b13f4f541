package county.bigtree.registry.people;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.UUID;

import county.bigtree.registry.session.EndSessions;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Ends whatever lets a person in without the password, on all nodes at once: sessions and
 * tokens.
 */
@Component
class EndAccess {

	private final JdbcClient jdbc;

	private final EndSessions sessions;

	private final SignInRecord record;

	EndAccess(JdbcClient jdbc, EndSessions sessions, SignInRecord record) {
		this.jdbc = jdbc;
		this.sessions = sessions;
		this.record = record;
	}

	void of(UUID person, Instant now) {
		this.sessions.of(person, null);
		tokens(person, now);
	}

	void tokens(UUID person, Instant now) {
		this.jdbc.sql("update access_token set revoked_at = ? where person = ? and revoked_at is null")
			.params(now.atOffset(ZoneOffset.UTC), person)
			.update();
	}

	SignInRecord record() {
		return this.record;
	}

}
