package county.bigtree.registry.people;

import java.util.Optional;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.session.EndSessions;
import org.jspecify.annotations.Nullable;

import org.springframework.core.env.Environment;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Changes the address that one signs in with, for who knows the password. Ends their
 * other sessions. Where a provider vouches for addresses, none is changed here: whoever
 * took somebody else's would let them into the wrong account.
 */
@Component
public class ChangeEmail {

	private final People people;

	private final SignIn signIn;

	private final SignInRecord record;

	private final EndSessions endSessions;

	private final boolean byProvider;

	ChangeEmail(People people, SignIn signIn, SignInRecord record, EndSessions endSessions, Environment environment) {
		this.people = people;
		this.signIn = signIn;
		this.record = record;
		this.endSessions = endSessions;
		this.byProvider = !environment.getProperty("registry.openid.issuer", "").isBlank();
	}

	/**
	 * Changes it.
	 * @param session the id of the session that goes on, if it is done in one
	 * @throws Problem where the password is wrong, or the address somebody's already
	 */
	@Transactional
	public void change(Actor actor, String wanted, String password, String network, @Nullable String session) {
		if (this.byProvider) {
			throw Problem.of(ProblemType.REFUSED, "Addresses are the provider's here, and are not changed.");
		}
		Person person = this.people.findById(actor.id()).orElseThrow();
		if (this.signIn.signIn(person.email(), password, network, SignInEvent.EMAIL_CHANGED).isEmpty()) {
			throw Problem.invalid("#/presentPassword", "wrong", "is not your present password");
		}
		Optional<Person> holder = this.people.findByEmail(wanted);
		if (holder.filter((other) -> !other.getId().equals(person.getId())).isPresent()) {
			throw taken();
		}
		byte[] before = SignInRecord.account(person.email());
		person.changeEmail(wanted);
		save(person);
		this.record.forget(before);
		this.endSessions.of(person.getId(), session);
	}

	/** Somebody may take it at the same moment. */
	private void save(Person person) {
		try {
			this.people.saveAndFlush(person);
		}
		catch (DataIntegrityViolationException ex) {
			throw taken();
		}
	}

	private static Problem taken() {
		return Problem.of(ProblemType.REFUSED, "This address can't be used here.");
	}

}
