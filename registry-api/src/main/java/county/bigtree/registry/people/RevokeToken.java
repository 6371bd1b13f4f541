package county.bigtree.registry.people;

import java.time.Clock;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes back a token of the one who asks. Others' tokens are as good as not there.
 */
@Component
public class RevokeToken {

	private final AccessTokens tokens;

	private final Clock clock;

	RevokeToken(AccessTokens tokens, Clock clock) {
		this.tokens = tokens;
		this.clock = clock;
	}

	@Transactional
	public void revoke(Actor owner, UUID token) {
		this.tokens.findByIdAndPerson(token, owner.id())
			.orElseThrow(() -> Problem.notFound("You have no such token."))
			.revoke(this.clock.instant());
	}

}
