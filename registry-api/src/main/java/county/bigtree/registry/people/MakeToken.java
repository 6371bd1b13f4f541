package county.bigtree.registry.people;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;

import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Makes a personal access token for the one who asks.
 */
@Component
public class MakeToken {

	static final String PREFIX = "bigtree_";

	/** Where no last day is asked for: long enough for a season's work. */
	private static final int DAYS_BY_DEFAULT = 180;

	private final AccessTokens tokens;

	private final Clock clock;

	MakeToken(AccessTokens tokens, Clock clock) {
		this.tokens = tokens;
		this.clock = clock;
	}

	/**
	 * The token itself is in the answer and nowhere else.
	 * @param expiresOn the last day on which it shall work, today or later
	 */
	@Transactional
	public Made make(Actor owner, String name, @Nullable LocalDate expiresOn, TokenScope scope) {
		LocalDate today = LocalDate.now(this.clock.withZone(ZoneOffset.UTC));
		LocalDate last = (expiresOn != null) ? expiresOn : today.plusDays(DAYS_BY_DEFAULT);
		if (last.isBefore(today)) {
			throw Problem.invalid("#/expiresOn", "out-of-range", "must not be before today, which is " + today);
		}
		String secret = Secret.make(PREFIX);
		AccessToken made = this.tokens
			.save(new AccessToken(owner.id(), name, secret, this.clock.instant(), last, scope));
		return new Made(secret, made.summary());
	}

	/**
	 * A token just made.
	 *
	 * @param secret to be shown once
	 */
	public record Made(String secret, TokenSummary summary) {

	}

}
