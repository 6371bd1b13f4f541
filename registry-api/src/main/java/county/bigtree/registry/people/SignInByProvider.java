package county.bigtree.registry.people;

import java.util.Optional;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/**
 * Finds the open account of someone whom an OpenID provider vouches for, by the e-mail
 * address that the provider has verified. Opens no account, and does not say why somebody
 * was refused. Counts failures together with those of passwords.
 */
@Component
@ConditionalOnProperty("registry.openid.issuer")
public class SignInByProvider {

	private static final int LONGEST_ADDRESS = 254;

	private final People people;

	private final Actors actors;

	private final SignInRecord record;

	SignInByProvider(People people, Actors actors, SignInRecord record) {
		this.people = people;
		this.actors = actors;
		this.record = record;
	}

	/**
	 * Finds the person.
	 * @param email as the provider gave it, if it did
	 * @param verified whether the provider says that the address is theirs
	 * @throws Problem where too much has failed before
	 */
	public Optional<Actor> signIn(@Nullable String email, boolean verified, String network) {
		SignInRecord.Attempt attempt = this.record.begin(SignInRecord.account((email != null) ? email : ""), network);
		if (attempt.isHeldBack()) {
			throw Problem
				.of(ProblemType.TOO_MANY_REQUESTS, "Too many sign-ins have failed. Wait as long as Retry-After says.")
				.retryAfter(attempt.pause().plusSeconds(1));
		}
		if (email == null || !verified || !isComparable(email)) {
			return Optional.empty();
		}
		Optional<Actor> actor = this.people.findByEmail(email)
			.filter(Person::isActive)
			.flatMap((person) -> this.actors.find(person.getId()));
		actor.ifPresent((found) -> this.record.succeeded(attempt, found.id(), SignInEvent.SIGNED_IN));
		return actor;
	}

	/** Records that a sign-in begun here came back as nobody's. */
	public void failed(String network) {
		this.record.begin(SignInRecord.account(""), network);
	}

	/**
	 * Letters beyond ASCII may become the same as others in lower case, as the Kelvin
	 * sign becomes a k: another's address.
	 */
	private static boolean isComparable(String email) {
		return email.length() <= LONGEST_ADDRESS && email.chars().allMatch((sign) -> sign > ' ' && sign < 0x7f);
	}

}
