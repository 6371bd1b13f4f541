package county.bigtree.registry.people;

import java.time.Clock;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes back all tokens of the one who asks.
 */
@Component
public class RevokeTokens {

	private final EndAccess endAccess;

	private final Clock clock;

	RevokeTokens(EndAccess endAccess, Clock clock) {
		this.endAccess = endAccess;
		this.clock = clock;
	}

	@Transactional
	public void revokeAll(Actor owner) {
		this.endAccess.tokens(owner.id(), this.clock.instant());
	}

}
