package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
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
 * administrator; all, for the administrator. As of today, or as of any day.
 */
@Component
public class ListPeople {

	private final JdbcClient jdbc;

	private final CountyDays days;

	private final Clock clock;

	ListPeople(JdbcClient jdbc, CountyDays days, Clock clock) {
		this.jdbc = jdbc;
		this.days = days;
		this.clock = clock;
	}

	/**
	 * At most {@code limit} people after the one named.
	 * @param county those with a role there, and only these roles; null for all
	 * @param on roles held at any time of that day, of the county or else in UTC; null
	 * for those held now
	 */
	@Transactional(readOnly = true)
	public List<Listed> list(Actor by, @Nullable String county, @Nullable LocalDate on, @Nullable After after,
			int limit) {
		boolean own = county != null && by.isCoordinatorOf(county);
		if (!own && !by.administrator()) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "You can list the people of a county that you coordinate.");
		}
		Span span = span(county, on);
		Map<UUID, Listed> people = new LinkedHashMap<>();
		this.jdbc.sql("""
				select p.id, p.email, p.credit_name, p.active from person p
				where (cast(:county as text) is null or exists (select from role_assignment r where r.person = p.id
						and r.county = :county and r.from_at < :to and (r.until_at is null or r.until_at > :from)))
					and (lower(p.credit_name), p.id) > (lower(:name), :id)
				order by lower(p.credit_name), p.id limit :limit""")
			.param("county", county, java.sql.Types.VARCHAR)
			.param("from", span.from())
			.param("to", span.to())
			.param("name", (after != null) ? after.creditName() : "")
			.param("id", (after != null) ? after.id() : new UUID(0, 0))
			.param("limit", limit)
			.query((row, number) -> new Listed(row.getObject("id", UUID.class), row.getString("email"),
					row.getString("credit_name"), row.getBoolean("active"), new ArrayList<>()))
			.list()
			.forEach((person) -> people.put(person.id(), person));
		addRoles(people, county, span);
		return List.copyOf(people.values());
	}

	private Span span(@Nullable String county, @Nullable LocalDate on) {
		if (on == null) {
			Instant now = this.clock.instant();
			return new Span(now.atOffset(ZoneOffset.UTC), now.plusNanos(1000).atOffset(ZoneOffset.UTC));
		}
		return new Span(this.days.start(on, county).atOffset(ZoneOffset.UTC),
				this.days.start(on.plusDays(1), county).atOffset(ZoneOffset.UTC));
	}

	private void addRoles(Map<UUID, Listed> people, @Nullable String county, Span span) {
		if (people.isEmpty()) {
			return;
		}
		this.jdbc.sql("""
				select id, person, county, role, from_at, until_at from role_assignment where person in (:people)
					and from_at < :to and (until_at is null or until_at > :from)
					and (cast(:county as text) is null or county = :county) order by county, role""")
			.param("people", people.keySet())
			.param("from", span.from())
			.param("to", span.to())
			.param("county", county, java.sql.Types.VARCHAR)
			.query((row) -> {
				Listed person = people.get(row.getObject("person", UUID.class));
				if (person != null) {
					person.roles().add(ListRoles.held(row));
				}
			});
	}

	/**
	 * The instants that count: roles held at any time from the one to before the other.
	 */
	private record Span(OffsetDateTime from, OffsetDateTime to) {
	}

	/** The last person of the page before. */
	public record After(String creditName, UUID id) {

	}

	/**
	 * A person in the list.
	 *
	 * @param active false where the account was closed
	 */
	public record Listed(UUID id, String email, String creditName, boolean active, List<HeldRole> roles) {

	}

}
