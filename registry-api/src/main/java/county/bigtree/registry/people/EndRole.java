package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Ends a role at once. Who no longer verifies in the county hands back what they have
 * open there. What was held stays on record.
 */
@Component
public class EndRole {

	private final JdbcClient jdbc;

	private final List<AssignedWork> openWork;

	private final Clock clock;

	EndRole(JdbcClient jdbc, List<AssignedWork> openWork, Clock clock) {
		this.jdbc = jdbc;
		this.openWork = openWork;
		this.clock = clock;
	}

	/** Ends the one with this id, of this person. */
	@Transactional
	public void end(Actor by, UUID person, UUID id) {
		Instant now = this.clock.instant();
		CountyRole role = open(person, id, now);
		GiveRole.requireMay(by, role);
		if (role.role() == Role.ADMINISTRATOR) {
			requireAnother(person, now);
		}
		end("id = :which", id, by.id(), now);
		if (role.county() != null && !verifies(person, role.county(), now)) {
			handBack(new AssignedWork.Leaving(person, role.county(), by.id(), "Their role ended."));
		}
	}

	/** Ends all that the person holds or was to hold, and hands everything back. */
	void endAll(UUID person, UUID by, Instant now, String reason) {
		// Whoever gives a role at the same moment waits, and then finds the account
		// closed.
		this.jdbc.sql("select id from person where id = ? for no key update").param(person).query((row) -> {
		});
		requireAnother(person, now);
		end("person = :which", person, by, now);
		handBack(new AssignedWork.Leaving(person, null, by, reason));
	}

	private void handBack(AssignedWork.Leaving leaving) {
		this.openWork.forEach((work) -> work.handBack(leaving));
	}

	private CountyRole open(UUID person, UUID id, Instant now) {
		return this.jdbc.sql("""
				select county, role from role_assignment
				where id = :id and person = :person and (until_at is null or until_at > :now) for no key update""")
			.param("id", id)
			.param("person", person)
			.param("now", now.atOffset(ZoneOffset.UTC))
			.query((row, number) -> new CountyRole(row.getString("county"), Role.ofCode(row.getString("role"))))
			.optional()
			.orElseThrow(() -> Problem.notFound("They hold no such role, or it has ended."));
	}

	/** A role that was still to begin is then as if it had never been given. */
	private void end(String which, UUID id, @Nullable UUID by, Instant now) {
		this.jdbc
			.sql("update role_assignment set until_at = greatest(:now, from_at), ended_by = :by where " + which
					+ " and (until_at is null or until_at > :now)")
			.param("now", now.atOffset(ZoneOffset.UTC))
			.param("by", by, java.sql.Types.OTHER)
			.param("which", id)
			.update();
	}

	private boolean verifies(UUID person, String county, Instant now) {
		return this.jdbc
			.sql("""
					select exists (select from role_assignment where person = :person and county = :county
						and role in ('verifier', 'coordinator') and from_at <= :now and (until_at is null or until_at > :now))""")
			.param("person", person)
			.param("county", county)
			.param("now", now.atOffset(ZoneOffset.UTC))
			.query(Boolean.class)
			.single();
	}

	/** Refuses to leave the service without an administrator. */
	private void requireAnother(UUID person, Instant now) {
		boolean last = this.jdbc.sql("""
				select bool_or(r.person = :person) and not bool_or(r.person <> :person)
				from role_assignment r join person p on p.id = r.person
				where r.role = 'administrator' and p.active and (r.until_at is null or r.until_at > :now)""")
			.param("person", person)
			.param("now", now.atOffset(ZoneOffset.UTC))
			.query((row, number) -> row.getBoolean(1))
			.single();
		if (last) {
			throw Problem.of(ProblemType.REFUSED, "They are the only administrator: let there be another first.");
		}
	}

}
