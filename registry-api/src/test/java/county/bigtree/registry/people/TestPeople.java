package county.bigtree.registry.people;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Makes people for tests: each with an account, the roles wanted, and an access token.
 */
@Component
public class TestPeople {

	/** Theirs all. */
	public static final String PASSWORD = "a password for tests";

	private static final AtomicInteger made = new AtomicInteger();

	private final Accounts accounts;

	private final MakeToken makeToken;

	private final Actors actors;

	private final TransactionTemplate transactions;

	private final Clock clock;

	private final JdbcClient jdbc;

	TestPeople(Accounts accounts, MakeToken makeToken, Actors actors, TransactionTemplate transactions, Clock clock,
			JdbcClient jdbc) {
		this.jdbc = jdbc;
		this.accounts = accounts;
		this.makeToken = makeToken;
		this.actors = actors;
		this.transactions = transactions;
		this.clock = clock;
	}

	public TestPerson with(CountyRole... roles) {
		int number = made.incrementAndGet();
		String email = "person-" + number + "@example.org";
		UUID id = this.transactions.execute((status) -> {
			UUID opened = this.accounts.open(email, "Person " + number, PASSWORD, this.clock.instant()).getId();
			this.accounts.give(opened, List.of(roles), null, this.clock.instant());
			return opened;
		});
		String token = this.makeToken.make(this.actors.get(id), "test", null, TokenScope.ALL).secret();
		return new TestPerson(id, email, "Person " + number, token);
	}

	/** Somebody who has an account already, with a token of their own. */
	public TestPerson known(UUID id) {
		Actor actor = this.actors.get(id);
		String email = this.jdbc.sql("select email from person where id = ?").param(id).query(String.class).single();
		return new TestPerson(id, email, actor.creditName(),
				this.makeToken.make(actor, "test", null, TokenScope.ALL).secret());
	}

	/** The same person with a token that is good for filing only. */
	public TestPerson withFilingToken(TestPerson person) {
		String token = this.makeToken.make(this.actors.get(person.id()), "filing", null, TokenScope.FILE).secret();
		return new TestPerson(person.id(), person.email(), person.creditName(), token);
	}

	/** Gives one more role. */
	public void give(TestPerson person, CountyRole role) {
		this.transactions.executeWithoutResult(
				(status) -> this.accounts.give(person.id(), List.of(role), null, this.clock.instant()));
	}

	/** Ends every role held. */
	public void takeRoles(TestPerson person) {
		this.jdbc.sql("update role_assignment set until_at = ? where person = ? and until_at is null")
			.params(this.clock.instant().atOffset(ZoneOffset.UTC), person.id())
			.update();
	}

	public TestPerson volunteer(String county) {
		return with(CountyRole.of(county, Role.VOLUNTEER));
	}

	public TestPerson verifier(String county) {
		return with(CountyRole.of(county, Role.VERIFIER));
	}

	public TestPerson coordinator(String... counties) {
		return with(Arrays.stream(counties)
			.map((county) -> CountyRole.of(county, Role.COORDINATOR))
			.toArray(CountyRole[]::new));
	}

	public TestPerson administrator() {
		return with(CountyRole.administrator());
	}

}
