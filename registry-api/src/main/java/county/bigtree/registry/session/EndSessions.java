package county.bigtree.registry.session;

import java.util.UUID;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Ends the sessions of a person on all nodes, in the transaction of whoever decided it.
 */
@Component
public class EndSessions {

	private final JdbcClient jdbc;

	EndSessions(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/** Ends all of them but the one with this id. */
	public void of(UUID person, @Nullable String except) {
		this.jdbc
			.sql("delete from spring_session where principal_name = :person and session_id is distinct from :except")
			.param("person", person.toString())
			.param("except", except, java.sql.Types.CHAR)
			.update();
	}

}
