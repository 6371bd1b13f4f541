package county.bigtree.registry.people;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Every role that a person holds, held or will hold, the latest first: to the person and
 * the administrator whole, to a coordinator as far as their county goes.
 */
@Component
public class ListRoles {

	private final JdbcClient jdbc;

	ListRoles(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	@Transactional(readOnly = true)
	public List<HeldRole> of(Actor asker, UUID person) {
		boolean whole = asker.administrator() || asker.id().equals(person);
		return this.jdbc
			.sql("""
					select id, county, role, from_at, until_at from role_assignment where person = ? order by from_at desc, id""")
			.param(person)
			.query((row, number) -> held(row))
			.list()
			.stream()
			.filter((held) -> whole || held.county() != null && asker.isCoordinatorOf(held.county()))
			.toList();
	}

	static HeldRole held(ResultSet row) throws SQLException {
		OffsetDateTime until = row.getObject("until_at", OffsetDateTime.class);
		return new HeldRole(row.getObject("id", UUID.class), row.getString("county"),
				Role.ofCode(row.getString("role")), row.getObject("from_at", OffsetDateTime.class).toInstant(),
				(until != null) ? until.toInstant() : null);
	}

}
