package county.bigtree.registry.people;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Knows who may verify in a county.
 */
@Component
public class Verifiers {

	private final JdbcClient jdbc;

	private final Clock clock;

	Verifiers(JdbcClient jdbc, Clock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The person, who must be one of the county's verifiers.
	 * @throws Problem of an invalid {@code verifier} in the request
	 */
	public UUID require(@Nullable UUID person, String county) {
		if (person == null || !verifies(person, county)) {
			throw Problem.invalid("#/verifier", "not-a-verifier", "must be a verifier of the county");
		}
		return person;
	}

	/**
	 * The person, who must have an account and be none of the county's verifiers.
	 * @throws Problem of an invalid {@code verifier} in the request
	 */
	public UUID requireGuest(@Nullable UUID person, String county) {
		boolean known = person != null && this.jdbc.sql("select exists (select from person where id = ? and active)")
			.param(person)
			.query(Boolean.class)
			.single();
		if (person == null || !known) {
			throw Problem.invalid("#/verifier", "unknown", "must be somebody with an account");
		}
		if (verifies(person, county)) {
			throw Problem.invalid("#/verifier", "not-a-guest", "is a verifier of the county, and no guest there");
		}
		return person;
	}

	private boolean verifies(UUID person, String county) {
		return this.jdbc
			.sql("""
					select exists (select from role_assignment where person = :person and county = :county
					  and role in ('verifier', 'coordinator') and from_at <= :now and (until_at is null or until_at > :now))""")
			.param("person", person)
			.param("county", county)
			.param("now", this.clock.instant().atOffset(ZoneOffset.UTC))
			.query(Boolean.class)
			.single();
	}

}
