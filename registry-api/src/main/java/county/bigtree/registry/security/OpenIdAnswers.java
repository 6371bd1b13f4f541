package county.bigtree.registry.security;

import java.io.IOException;
import java.time.Clock;
import java.util.Optional;

import county.bigtree.registry.http.ClientNetwork;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.SignInByProvider;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.session.PersonSession;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.oauth2.core.oidc.user.OidcUser;

/**
 * Lets those in who come back from the provider as somebody with an account, and tells
 * all others the same. Why it was goes into the program's log alone.
 */
final class OpenIdAnswers {

	private static final Logger log = LoggerFactory.getLogger(OpenIdAnswers.class);

	private final SignInByProvider signIn;

	private final ProblemAnswers answers;

	private final Clock clock;

	private final String home;

	/**
	 * Sends those who are in to this address.
	 */
	OpenIdAnswers(SignInByProvider signIn, ProblemAnswers answers, Clock clock, String home) {
		this.home = home;
		this.signIn = signIn;
		this.answers = answers;
		this.clock = clock;
	}

	/** Begins the session of the account, if there is one. */
	void cameBack(HttpServletRequest request, HttpServletResponse response, Authentication vouched) throws IOException {
		SecurityContextHolder.clearContext();
		try {
			Optional<Actor> actor = (vouched.getPrincipal() instanceof OidcUser user) ? find(user, request)
					: Optional.empty();
			if (actor.isPresent()) {
				PersonSession.begin(request, actor.get().id(), this.clock.instant());
				response.sendRedirect(this.home);
			}
			else {
				this.answers.write(refusal(), request, response);
			}
		}
		catch (Problem problem) {
			this.answers.write(problem, request, response);
		}
	}

	/** Refuses what did not come from the provider, or not for this session. */
	void wentWrong(HttpServletRequest request, HttpServletResponse response, AuthenticationException cause)
			throws IOException {
		log.warn("nobody came back from the OpenID provider: {}", cause.getMessage());
		// Others can send a browser here as often as they like: that shall hold nobody
		// back.
		if (OpenIdAttempts.wasBegun(request)) {
			this.signIn.failed(ClientNetwork.of(request));
		}
		this.answers.write(refusal(), request, response);
	}

	/** Says that the provider does not answer. */
	void notReached(HttpServletRequest request, HttpServletResponse response, AuthenticationException cause)
			throws IOException {
		log.warn("the OpenID provider can't be asked", cause);
		this.answers.write(Problem.of(ProblemType.BUSY, "The provider of sign-ins does not answer."), request,
				response);
	}

	private Optional<Actor> find(OidcUser user, HttpServletRequest request) {
		boolean verified = Boolean.TRUE.equals(user.getEmailVerified());
		return this.signIn.signIn(user.getEmail(), verified, ClientNetwork.of(request));
	}

	private static Problem refusal() {
		return Problem.of(ProblemType.SIGN_IN_FAILED, "You could not be signed in by the provider.");
	}

}
