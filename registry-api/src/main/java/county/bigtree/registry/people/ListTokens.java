package county.bigtree.registry.people;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lists the tokens of the one who asks that still work, newest first.
 */
@Component
public class ListTokens {

	private final AccessTokens tokens;

	private final Clock clock;

	ListTokens(AccessTokens tokens, Clock clock) {
		this.tokens = tokens;
		this.clock = clock;
	}

	@Transactional(readOnly = true)
	public List<TokenSummary> list(Actor owner) {
		return this.tokens.listWorking(owner.id(), LocalDate.now(this.clock.withZone(ZoneOffset.UTC)))
			.stream()
			.map(AccessToken::summary)
			.toList();
	}

}
