package county.bigtree.registry.security;

import java.util.List;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.TokenHolder;
import county.bigtree.registry.people.TokenScope;

import org.springframework.security.authentication.AbstractAuthenticationToken;

/**
 * A request whose sender is known. Its name is the person's id.
 */
final class ActorAuthentication extends AbstractAuthenticationToken {

	private final transient Actor actor;

	private final TokenScope scope;

	ActorAuthentication(Actor actor) {
		this(new TokenHolder(actor, TokenScope.ALL));
	}

	ActorAuthentication(TokenHolder holder) {
		super(List.of());
		this.actor = holder.actor();
		this.scope = holder.scope();
		setAuthenticated(true);
	}

	/** What may be done with what came along, at most. */
	TokenScope scope() {
		return this.scope;
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
