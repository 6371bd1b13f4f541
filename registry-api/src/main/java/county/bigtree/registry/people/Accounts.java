package county.bigtree.registry.people;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/**
 * Opens accounts and gives roles, within the transaction of whoever decided it.
 */
@Component
class Accounts {

	private final People people;

	private final JdbcClient jdbc;

	private final PasswordEncoder passwords;

	Accounts(People people, JdbcClient jdbc, PasswordEncoder passwords) {
		this.people = people;
		this.jdbc = jdbc;
		this.passwords = passwords;
	}

	Person open(String email, String creditName, String password, Instant at) {
		String hash = String.valueOf(this.passwords.encode(password));
		return this.people.saveAndFlush(new Person(email.strip(), creditName.strip(), hash, at));
	}

	/** A role held already stays as it is. */
	void give(UUID person, Collection<CountyRole> roles, @Nullable UUID givenBy, Instant at) {
		for (CountyRole role : roles) {
			this.jdbc.sql("""
					insert into role_assignment (id, person, county, role, from_at, given_by)
					select :id, :person, :county, :role, :at, :givenBy
					where not exists (select from role_assignment where person = :person
						and county is not distinct from :county and role = :role
						and (until_at is null or until_at > :at))""")
				.param("id", Uuid7.next())
				.param("person", person)
				.param("county", role.county(), java.sql.Types.VARCHAR)
				.param("role", role.role().code())
				.param("at", at.atOffset(ZoneOffset.UTC))
				.param("givenBy", givenBy, java.sql.Types.OTHER)
				.update();
		}
	}

}
