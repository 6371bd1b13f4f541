package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Gives someone a role from a day on, for as long as wanted: a guest verifies for a week.
 */
@Component
public class GiveRole {

	private final JdbcClient jdbc;

	private final CountyDays days;

	private final Clock clock;

	GiveRole(JdbcClient jdbc, CountyDays days, Clock clock) {
		this.jdbc = jdbc;
		this.days = days;
		this.clock = clock;
	}

	/**
	 * Gives it.
	 * @param from the first day; null for at once
	 * @param until the last day; null for no end
	 */
	@Transactional
	public HeldRole give(Actor by, UUID person, CountyRole role, @Nullable LocalDate from, @Nullable LocalDate until) {
		requireMay(by, role);
		requireOpen(person);
		HeldRole held = span(role, from, until);
		this.jdbc.sql("""
				insert into role_assignment (id, person, county, role, from_at, until_at, given_by)
				values (:id, :person, :county, :role, :from, :until, :by)""")
			.param("id", held.id())
			.param("person", person)
			.param("county", held.county(), java.sql.Types.VARCHAR)
			.param("role", held.role().code())
			.param("from", held.from().atOffset(ZoneOffset.UTC))
			.param("until", (held.until() != null) ? held.until().atOffset(ZoneOffset.UTC) : null,
					java.sql.Types.TIMESTAMP_WITH_TIMEZONE)
			.param("by", by.id())
			.update();
		return held;
	}

	/** And keeps it open until the role is given. */
	private void requireOpen(UUID person) {
		boolean closed = this.jdbc.sql("select id from person where id = ? and active for share")
			.param(person)
			.query(UUID.class)
			.optional()
			.isEmpty();
		if (closed) {
			throw Problem.notFound("There is no such person, or their account is closed.");
		}
	}

	static void requireMay(Actor by, CountyRole role) {
		String county = role.county();
		boolean own = county != null && by.isCoordinatorOf(county);
		if (!own && !by.administrator()) {
			throw Problem.of(ProblemType.NOT_ALLOWED,
					"You can give and end roles only in a county that you coordinate.");
		}
	}

	private HeldRole span(CountyRole role, @Nullable LocalDate from, @Nullable LocalDate until) {
		Instant now = this.clock.instant();
		LocalDate today = this.days.today(now, role.county());
		if (from != null && from.isBefore(today)) {
			throw Problem.invalid("#/from", "out-of-range", "must not be before today, " + today);
		}
		LocalDate first = (from != null) ? from : today;
		if (until != null && until.isBefore(first)) {
			throw Problem.invalid("#/until", "out-of-range", "must not be before the first day, " + first);
		}
		Instant begins = first.equals(today) ? now : this.days.start(first, role.county());
		return new HeldRole(Uuid7.next(), role.county(), role.role(), begins,
				(until != null) ? this.days.start(until.plusDays(1), role.county()) : null);
	}

}
