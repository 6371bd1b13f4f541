package county.bigtree.registry.people;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Knows whose account someone may manage: the administrator everybody's, a coordinator
 * that of people who hold roles in no other county than theirs. Else a coordinator could
 * come by roles in other counties through the accounts of those who hold them.
 */
@Component
public class ManagedPeople {

	private final JdbcClient jdbc;

	ManagedPeople(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The person, whom the actor must be allowed to manage.
	 * @throws Problem of not being found, to a coordinator also where they belong
	 * elsewhere altogether; or of not being allowed
	 */
	public UUID require(Actor by, UUID person) {
		List<@Nullable String> counties = this.jdbc.sql("""
				select r.county from person p left join role_assignment r on r.person = p.id
					and (r.until_at is null or r.until_at > now())
				where p.id = ?""").param(person).query((row, number) -> row.getString("county")).list();
		if (by.administrator() && !counties.isEmpty()) {
			return person;
		}
		if (counties.stream().noneMatch((county) -> county != null && by.isCoordinatorOf(county))) {
			throw Problem.notFound("There is no such person in a county that you coordinate.");
		}
		if (!counties.stream().allMatch((county) -> county != null && by.isCoordinatorOf(county))) {
			throw Problem.of(ProblemType.NOT_ALLOWED,
					"They hold roles beyond your county: ask the administrator of the service.");
		}
		return person;
	}

}
