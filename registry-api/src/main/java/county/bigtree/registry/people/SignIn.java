package county.bigtree.registry.people;

import java.util.Optional;

import org.jspecify.annotations.Nullable;

import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Checks an e-mail address with a password. Takes as long where there is no such account
 * as where the password is wrong, and does not say which it was.
 */
@Component
public class SignIn {

	private final People people;

	private final Actors actors;

	private final PasswordEncoder passwords;

	private final String nobodysHash;

	SignIn(People people, Actors actors, PasswordEncoder passwords) {
		this.people = people;
		this.actors = actors;
		this.passwords = passwords;
		this.nobodysHash = String.valueOf(passwords.encode(Secret.make("")));
	}

	@Transactional(readOnly = true)
	public Optional<Actor> signIn(String email, String password) {
		Person person = this.people.findByEmail(email).filter(Person::isActive).orElse(null);
		return matches(person, password) && person != null ? this.actors.find(person.getId()) : Optional.empty();
	}

	private boolean matches(@Nullable Person person, String password) {
		String given = (password.length() <= 2 * Password.MOST) ? password : "";
		return this.passwords.matches(given, (person != null) ? person.passwordHash() : this.nobodysHash);
	}

}
