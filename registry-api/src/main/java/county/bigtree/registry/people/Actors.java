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

	private static final String PERSON_WITH_ROLES = """
			select p.id, p.credit_name, r.county, r.role from person p
			left join role_assignment r on r.person = p.id
				and r.from_at <= :now and (r.until_at is null or r.until_at > :now)
			where p.active and\s""";

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
		return this.jdbc.sql("""
				select id, person, scope, last_used_on from access_token
				where hash = :hash and revoked_at is null and expires_on >= :today""")
			.param("hash", Secret.hash(token))
			.param("today", today)
			.query(Token.class)
			.optional()
			.flatMap((found) -> holder(found, today));
	}

	private Optional<TokenHolder> holder(Token token, LocalDate today) {
		TokenScope scope = TokenScope.ofCode(token.scope());
		Optional<Actor> owner = find(token.person());
		if (owner.isPresent() && !today.equals(token.lastUsedOn())) {
			this.jdbc.sql("update access_token set last_used_on = ? where id = ?").params(today, token.id()).update();
		}
		return owner.map((actor) -> new TokenHolder((scope == TokenScope.FILE) ? actor.asVolunteer() : actor, scope));
	}

	private Optional<Actor> find(String condition, Map<String, ?> parameters) {
		OffsetDateTime now = this.clock.instant().atOffset(ZoneOffset.UTC);
		List<Row> rows = this.jdbc.sql(PERSON_WITH_ROLES + condition)
			.param("now", now)
			.params(parameters)
			.query(Row.class)
			.list();
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

	private record Token(UUID id, UUID person, String scope, @Nullable LocalDate lastUsedOn) {
	}

}
