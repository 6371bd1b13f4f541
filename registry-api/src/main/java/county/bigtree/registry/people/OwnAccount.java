package county.bigtree.registry.people;

import java.util.Optional;

import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * What a person may see and change of their own account.
 */
@Component
public class OwnAccount {

	private final People people;

	private final SignIn signIn;

	OwnAccount(People people, SignIn signIn) {
		this.people = people;
		this.signIn = signIn;
	}

	@Transactional(readOnly = true)
	public Kept read(Actor actor) {
		return person(actor).kept();
	}

	/** Takes the names given; what is null stays as it is. */
	@Transactional
	public Kept name(Actor actor, @Nullable String creditName, @Nullable String legalName) {
		Person person = person(actor);
		person.name(creditName, legalName);
		return person.kept();
	}

	/**
	 * Whoever asks for this must know the password.
	 * @param pointer where it stands in the request
	 */
	public void requirePassword(Actor actor, String password, String network, String pointer) {
		Optional<Actor> same = this.signIn.signIn(person(actor).email(), password, network, SignInEvent.PASSWORD_GIVEN);
		if (same.isEmpty()) {
			throw Problem.invalid(pointer, "wrong", "is not your present password");
		}
	}

	private Person person(Actor actor) {
		return this.people.findById(actor.id()).orElseThrow();
	}

	/**
	 * What is kept of a person themselves.
	 *
	 * @param creditName shown to all
	 * @param legalName shown to nobody else; null where none was given
	 */
	public record Kept(java.util.UUID id, String email, String creditName, @Nullable String legalName,
			java.time.Instant createdAt) {
	}

}
