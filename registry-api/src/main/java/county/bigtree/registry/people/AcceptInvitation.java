package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Opens an account by an invitation, or adds its roles to the account that its address
 * has already, whose password must then be given.
 */
@Component
public class AcceptInvitation {

	private final Invitations invitations;

	private final People people;

	private final Accounts accounts;

	private final SignIn signIn;

	private final Clock clock;

	AcceptInvitation(Invitations invitations, People people, Accounts accounts, SignIn signIn, Clock clock) {
		this.invitations = invitations;
		this.people = people;
		this.accounts = accounts;
		this.signIn = signIn;
		this.clock = clock;
	}

	/**
	 * Returns the id of the person whose account it is.
	 * @param network where it was sent from
	 */
	@Transactional
	public UUID accept(String secret, String password, @Nullable String creditName, String network) {
		Instant now = this.clock.instant();
		Invitation invitation = this.invitations.findByHash(Secret.hash(secret))
			.filter((found) -> found.isOpen(now))
			.orElseThrow(() -> Problem.of(ProblemType.REFUSED,
					"This invitation is not known, was used already, or is too old. Ask for a new one."));
		Optional<Person> known = this.people.findByEmail(invitation.email());
		Person person = known.isPresent() ? checked(known.get(), password, network)
				: open(invitation, password, creditName, now);
		this.accounts.give(person.getId(), invitation.roles(), invitation.invitedBy(), now);
		invitation.accept(person.getId(), now);
		return person.getId();
	}

	private Person checked(Person known, String password, String network) {
		if (this.signIn.signIn(known.email(), password, network, SignInEvent.PASSWORD_GIVEN).isEmpty()) {
			throw Problem.of(ProblemType.REFUSED,
					"The invited address has an account already. Give its password to add the new roles to it.");
		}
		return known;
	}

	private Person open(Invitation invitation, String password, @Nullable String creditName, Instant now) {
		String name = (creditName != null) ? creditName : invitation.creditName();
		if (name == null) {
			throw Problem.invalid("#/creditName", "missing", "is needed: the invitation names none");
		}
		Password.require(password, "#/password", List.of(invitation.email(), name));
		return this.accounts.open(invitation.email(), name, password, now);
	}

}
