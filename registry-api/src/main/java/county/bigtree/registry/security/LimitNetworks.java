package county.bigtree.registry.security;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Holds back networks that ask for more than their share, before anything is looked up
 * for them.
 */
class LimitNetworks extends OncePerRequestFilter {

	private final NetworkAllowance allowance;

	private final ProblemAnswers answers;

	LimitNetworks(NetworkAllowance allowance, ProblemAnswers answers) {
		this.allowance = allowance;
		this.answers = answers;
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		Optional<Duration> pause = this.allowance.ask(request);
		if (pause.isPresent()) {
			this.answers.write(tooMany(pause.get()), request, response);
		}
		else {
			chain.doFilter(request, response);
		}
	}

	static Problem tooMany(Duration pause) {
		return Problem
			.of(ProblemType.TOO_MANY_REQUESTS,
					"That is more than is served to one asker at once. Wait as long as Retry-After says.")
			.retryAfter(pause);
	}

}
