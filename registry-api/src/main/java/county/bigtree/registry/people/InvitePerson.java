package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Invites someone: the administrator with any role, a coordinator with roles in their own
 * county.
 */
@Component
public class InvitePerson {

	private static final String PREFIX = "invitation_";

	private final Invitations invitations;

	private final Clock clock;

	InvitePerson(Invitations invitations, Clock clock) {
		this.invitations = invitations;
		this.clock = clock;
	}

	@Transactional
	public Invited invite(Actor by, String email, @Nullable String creditName, List<CountyRole> roles) {
		for (CountyRole role : roles) {
			String county = role.county();
			boolean own = county != null && by.isCoordinatorOf(county);
			if (!own && !by.administrator()) {
				throw Problem.of(ProblemType.NOT_ALLOWED, "You can give roles only in a county that you coordinate.");
			}
		}
		return invite(by.id(), email, creditName, new LinkedHashSet<>(roles));
	}

	/** At the server's console: an administrator who is invited by nobody. */
	@Transactional
	public Invited inviteAdministrator(String email) {
		return invite((UUID) null, email, null, Set.of(CountyRole.administrator()));
	}

	private Invited invite(@Nullable UUID by, String email, @Nullable String creditName, Set<CountyRole> roles) {
		String secret = Secret.make(PREFIX);
		Invitation made = this.invitations
			.save(new Invitation(email, creditName, roles, secret, by, this.clock.instant()));
		return new Invited(made.getId(), secret, made.email(), made.creditName(), List.copyOf(made.roles()),
				made.expiresAt());
	}

	/**
	 * An invitation just made.
	 *
	 * @param secret to be handed to the one invited, and to nobody else
	 */
	public record Invited(UUID id, String secret, String email, @Nullable String creditName, List<CountyRole> roles,
			Instant expiresAt) {

	}

}
