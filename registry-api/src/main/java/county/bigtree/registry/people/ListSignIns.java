package county.bigtree.registry.people;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Tells what happened at the door, newest first: to each person what concerns their
 * account, failures with its address included; to the administrator everything.
 */
@Component
public class ListSignIns {

	private static final UUID NEWEST = new UUID(-1L, -1L);

	private final JdbcClient jdbc;

	ListSignIns(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * At most {@code limit} before the one named.
	 * @param person whose; null for everybody's
	 */
	@Transactional(readOnly = true)
	public List<Happened> list(@Nullable UUID person, @Nullable UUID before, int limit) {
		return this.jdbc.sql("""
				select e.id, e.happened_at, e.event, e.person, e.client_network from sign_in_event e
				where e.id < :before and (cast(:person as uuid) is null or e.person = :person or e.account = :account)
				order by e.id desc limit :limit""")
			.param("before", (before != null) ? before : NEWEST)
			.param("person", person, java.sql.Types.OTHER)
			.param("account", account(person).orElse(null), java.sql.Types.BINARY)
			.param("limit", limit)
			.query((row, number) -> new Happened(row.getObject("id", UUID.class),
					row.getObject("happened_at", OffsetDateTime.class).toInstant(),
					SignInEvent.ofCode(row.getString("event")), row.getObject("person", UUID.class),
					row.getString("client_network")))
			.list();
	}

	private Optional<byte[]> account(@Nullable UUID person) {
		return (person == null) ? Optional.empty()
				: this.jdbc.sql("select email from person where id = ?")
					.param(person)
					.query(String.class)
					.optional()
					.map(SignInRecord::account);
	}

	/**
	 * Something that happened.
	 *
	 * @param person null where it failed
	 * @param network where it came from: an IPv4 address, or 64 bits of an IPv6 address
	 */
	public record Happened(UUID id, Instant at, SignInEvent event, @Nullable UUID person, String network) {
	}

}
