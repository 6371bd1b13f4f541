package county.bigtree.registry.people;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lists people by credit name: those with a role in a county, for its coordinator and the
 * administrator; all, for the administrator.
 */
@Component
public class ListPeople {

	private final JdbcClient jdbc;

	ListPeople(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * At most {@code limit} people after the one named.
	 * @param county those with a role there, and only these roles; null for all
	 */
	@Transactional(readOnly = true)
	public List<Listed> list(Actor by, @Nullable String county, @Nullable After after, int limit) {
		boolean own = county != null && by.isCoordinatorOf(county);
		if (!own && !by.administrator()) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "You can list the people of a county that you coordinate.");
		}
		Map<UUID, Listed> people = new LinkedHashMap<>();
		this.jdbc.sql("""
				select p.id, p.email, p.credit_name, p.active from person p
				where (cast(:county as text) is null or exists (select from role_assignment r where r.person = p.id
						and r.county = :county and r.until_at is null))
					and (lower(p.credit_name), p.id) > (lower(:name), :id)
				order by lower(p.credit_name), p.id limit :limit""")
			.param("county", county, java.sql.Types.VARCHAR)
			.param("name", (after != null) ? after.creditName() : "")
			.param("id", (after != null) ? after.id() : new UUID(0, 0))
			.param("limit", limit)
			.query((row, number) -> new Listed(row.getObject("id", UUID.class), row.getString("email"),
					row.getString("credit_name"), row.getBoolean("active"), new ArrayList<>()))
			.list()
			.forEach((person) -> people.put(person.id(), person));
		addRoles(people, county);
		return List.copyOf(people.values());
	}

	private void addRoles(Map<UUID, Listed> people, @Nullable String county) {
		if (people.isEmpty()) {
			return;
		}
		this.jdbc.sql("""
				select person, county, role from role_assignment where person in (:people) and until_at is null
					and (cast(:county as text) is null or county = :county) order by county, role""")
			.param("people", people.keySet())
			.param("county", county, java.sql.Types.VARCHAR)
			.query((row) -> {
				Listed person = people.get(row.getObject("person", UUID.class));
				if (person != null) {
					person.roles().add(new CountyRole(row.getString("county"), Role.ofCode(row.getString("role"))));
				}
			});
	}

	/** The last person of the page before. */
	public record After(String creditName, UUID id) {

	}

	/**
	 * A person in the list.
	 *
	 * @param active false where the account was closed
	 */
	public record Listed(UUID id, String email, String creditName, boolean active, List<CountyRole> roles) {

	}

}
