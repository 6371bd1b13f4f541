package county.bigtree.registry.security;

import java.util.List;

import county.bigtree.registry.people.Actor;

import org.springframework.security.authentication.AbstractAuthenticationToken;

/**
 * A request whose sender is known. Its name is the person's id.
 */
final class ActorAuthentication extends AbstractAuthenticationToken {

	private final transient Actor actor;

	ActorAuthentication(Actor actor) {
		super(List.of());
		this.actor = actor;
		setAuthenticated(true);
	}

	@Override
	public Actor getPrincipal() {
		return this.actor;
	}

	@Override
	public String getCredentials() {
		return "";
	}

	@Override
	public String getName() {
		return this.actor.id().toString();
	}

}
