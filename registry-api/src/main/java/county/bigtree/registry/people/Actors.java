package county.bigtree.registry.people;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Finds who is asking, with the roles held now. People whose account is not active are
 * not found.
 */
@Component
public class Actors {

	private static final String ROLES = """
			left join role_assignment r on r.person = p.id
				and r.from_at <= :now and (r.until_at is null or r.until_at > :now)
			where p.active and\s""";

	private static final String PERSON_WITH_ROLES = "select p.id, p.credit_name, r.county, r.role from person p "
			+ ROLES;

	private static final String TOKEN_WITH_ROLES = """
			select t.id as token, t.scope, t.last_used_on, p.id, p.credit_name, r.county, r.role
			from access_token t join person p on p.id = t.person
			""" + ROLES + "t.hash = :hash and t.revoked_at is null and t.expires_on >= :today";

	private final JdbcClient jdbc;

	private final Clock clock;

	Actors(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	public Optional<Actor> find(UUID person) {
		return find("p.id = :id", Map.of("id", person));
	}

	public Actor get(UUID person) {
		return find(person).orElseThrow(() -> new IllegalArgumentException("no active person has the id " + person));
	}

	/**
	 * The owner of an access token that has neither expired nor been taken back. Notes
	 * the day.
	 */
	public Optional<TokenHolder> findByToken(String token) {
		LocalDate today = LocalDate.now(this.clock.withZone(ZoneOffset.UTC));
		List<Token> rows = this.jdbc.sql(TOKEN_WITH_ROLES)
			.param("hash", Secret.hash(token))
			.param("today", today)
			.param("now", now())
			.query(Token.class)
			.list();
		rows.stream()
			.filter((row) -> !today.equals(row.lastUsedOn()))
			.limit(1)
			.forEach((row) -> this.jdbc.sql("update access_token set last_used_on = ? where id = ?")
				.params(today, row.token())
				.update());
		return actor(rows.stream().map(Token::ofPerson).toList())
			.map((actor) -> holder(actor, TokenScope.ofCode(rows.get(0).scope())));
	}

	private static TokenHolder holder(Actor actor, TokenScope scope) {
		return new TokenHolder((scope == TokenScope.FILE) ? actor.asVolunteer() : actor, scope);
	}

	private Optional<Actor> find(String condition, Map<String, ?> parameters) {
		return actor(this.jdbc.sql(PERSON_WITH_ROLES + condition)
			.param("now", now())
			.params(parameters)
			.query(Row.class)
			.list());
	}

	private OffsetDateTime now() {
		return this.clock.instant().atOffset(ZoneOffset.UTC);
	}

	private static Optional<Actor> actor(List<Row> rows) {
		List<CountyRole> roles = new ArrayList<>();
		for (Row row : rows) {
			if (row.role() != null) {
				roles.add(new CountyRole(row.county(), Role.ofCode(row.role())));
			}
		}
		return rows.stream().findFirst().map((first) -> Actor.of(first.id(), first.creditName(), roles));
	}

	private record Row(UUID id, String creditName, @Nullable String county, @Nullable String role) {

	}

	private record Token(UUID token, String scope, @Nullable LocalDate lastUsedOn, UUID id, String creditName,
			@Nullable String county, @Nullable String role) {

		Row ofPerson() {
			return new Row(this.id, this.creditName, this.county, this.role);
		}

	}

}
