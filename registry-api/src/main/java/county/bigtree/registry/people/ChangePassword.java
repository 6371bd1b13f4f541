package county.bigtree.registry.people;

import java.util.List;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.session.EndSessions;
import org.jspecify.annotations.Nullable;

import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Changes the password of the one who asks, who must know the present one. Ends their
 * other sessions.
 */
@Component
public class ChangePassword {

	private final People people;

	private final SignIn signIn;

	private final PasswordEncoder passwords;

	private final EndSessions endSessions;

	ChangePassword(People people, SignIn signIn, PasswordEncoder passwords, EndSessions endSessions) {
		this.people = people;
		this.signIn = signIn;
		this.passwords = passwords;
		this.endSessions = endSessions;
	}

	/**
	 * Changes it.
	 * @param session the id of the session that goes on, if it is done in one
	 */
	@Transactional
	public void change(Actor actor, String present, String wanted, String network, @Nullable String session) {
		Person person = this.people.findById(actor.id()).orElseThrow();
		Password.require(wanted, "#/newPassword", List.of(person.email(), person.creditName()));
		if (this.signIn.signIn(person.email(), present, network, SignInEvent.PASSWORD_CHANGED).isEmpty()) {
			throw Problem.invalid("#/presentPassword", "wrong", "is not your present password");
		}
		person.changePassword(String.valueOf(this.passwords.encode(wanted)));
		this.endSessions.of(person.getId(), session);
	}

}
