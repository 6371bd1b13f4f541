package county.bigtree.registry.people;

import java.time.Clock;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Erases a person: closes the account for good, drops name, address, password and what
 * happened at the door, and all words they wrote and photos they sent. The facts stay, by
 * someone who is not named any more; the journal keeps the digests of the words, and says
 * that they were erased.
 */
@Component
public class EraseAccount {

	/** Rows that are about the person and nothing else. */
	private static final List<String> DROPPED = List.of(
			"delete from sign_in_event where person = :person or account = :account",
			"delete from keyed_answer where account = :person", "delete from access_token where person = :person",
			"delete from notice where recipient = :person", "delete from notice_refusal where person = :person");

	private final People people;

	private final CloseAccount closeAccount;

	private final List<AuthoredWords> words;

	private final JdbcClient jdbc;

	private final Clock clock;

	EraseAccount(People people, CloseAccount closeAccount, List<AuthoredWords> words, JdbcClient jdbc, Clock clock) {
		this.people = people;
		this.closeAccount = closeAccount;
		this.words = words;
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Erases the person.
	 * @param by who decided it: the person or the administrator
	 */
	@Transactional
	public void erase(UUID id, UUID by) {
		Person person = this.people.findById(id)
			.filter((found) -> !found.isErased())
			.orElseThrow(() -> Problem.notFound("There is no such person."));
		this.closeAccount.close(person, by, "Their account was closed.");
		String ground = id.equals(by) ? "asked-by-author" : "by-administrator";
		this.words.forEach((written) -> written.erase(id, by, ground));
		byte[] account = SignInRecord.account(person.email());
		DROPPED.forEach((drop) -> this.jdbc.sql(drop).param("person", id).param("account", account).update());
		this.jdbc.sql(
				"update invitation set email = :gone, credit_name = null where accepted_by = :person or lower(email) = lower(:email)")
			.param("gone", Person.erasedAddress(id))
			.param("person", id)
			.param("email", person.email())
			.update();
		person.erase(this.clock.instant());
	}

}
