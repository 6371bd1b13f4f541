package county.bigtree.registry.people;

import java.util.Optional;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;

/**
 * Checks an e-mail address with a password. Takes as long where there is no such account
 * as where the password is wrong, and does not say which it was. Holds back where too
 * many have failed, whether or not the account exists.
 */
@Component
public class SignIn {

	private static final int LONGEST_ADDRESS = 254;

	private final People people;

	private final Actors actors;

	private final PasswordEncoder passwords;

	private final SignInRecord record;

	private final String nobodysHash;

	SignIn(People people, Actors actors, PasswordEncoder passwords, SignInRecord record) {
		this.people = people;
		this.actors = actors;
		this.passwords = passwords;
		this.record = record;
		this.nobodysHash = String.valueOf(passwords.encode(Secret.make("")));
	}

	/**
	 * Finds the person, if the two fit.
	 * @param network where it was sent from
	 * @param what is recorded if they fit
	 * @throws Problem where too much has failed before
	 */
	public Optional<Actor> signIn(String email, String password, String network, SignInEvent what) {
		SignInRecord.Attempt attempt = this.record.begin(SignInRecord.account(email), network);
		if (attempt.isHeldBack()) {
			throw Problem
				.of(ProblemType.TOO_MANY_REQUESTS, "Too many sign-ins have failed. Wait as long as Retry-After says.")
				.retryAfter(attempt.pause().plusSeconds(1));
		}
		Person person = find(email).filter(Person::isActive).orElse(null);
		if (!matches(person, password) || person == null) {
			return Optional.empty();
		}
		this.record.succeeded(attempt, person.getId(), what);
		return this.actors.find(person.getId());
	}

	private Optional<Person> find(String email) {
		boolean possible = email.length() <= LONGEST_ADDRESS && email.chars().noneMatch(Character::isISOControl);
		return possible ? this.people.findByEmail(email.strip()) : Optional.empty();
	}

	private boolean matches(@Nullable Person person, String password) {
		String given = (password.length() <= 2 * Password.MOST) ? password : "";
		return this.passwords.matches(given, (person != null) ? person.passwordHash() : this.nobodysHash);
	}

}
