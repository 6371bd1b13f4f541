package county.bigtree.registry.security;

import java.io.IOException;
import java.net.URI;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.session.PublicAddress;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Takes forms from the service's own pages alone, by what browsers say of where a request
 * comes from (Fetch Metadata, W3C working draft of 1 April 2025; Origin, RFC 6454). It
 * stands before the token of the session and covers forms of those who have none: signing
 * in, letters. A client that says neither is no browser, and bears nobody's cookie
 * unasked.
 */
class FromHere extends OncePerRequestFilter {

	private static final String SITE = "Sec-Fetch-Site";

	private final ProblemAnswers answers;

	private final PublicAddress address;

	FromHere(ProblemAnswers answers, PublicAddress address) {
		this.answers = answers;
		this.address = address;
	}

	@Override
	protected boolean shouldNotFilter(HttpServletRequest request) {
		return !CsrfFilter.DEFAULT_CSRF_MATCHER.matches(request) || request.getRequestURI().startsWith("/api/");
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		if (isFromHere(request)) {
			chain.doFilter(request, response);
		}
		else {
			this.answers.write(Problem.of(ProblemType.CROSS_SITE, "This form was sent from another site."), request,
					response);
		}
	}

	private boolean isFromHere(HttpServletRequest request) {
		String site = request.getHeader(SITE);
		if (site != null) {
			return site.equals("same-origin") || site.equals("none");
		}
		String origin = request.getHeader(HttpHeaders.ORIGIN);
		return origin == null || isOurs(origin, request.getHeader(HttpHeaders.HOST));
	}

	private boolean isOurs(String origin, @Nullable String host) {
		try {
			String from = URI.create(origin).getRawAuthority();
			return from != null && (from.equalsIgnoreCase(host) || this.address.of("/").equals(origin + "/"));
		}
		catch (IllegalArgumentException ex) {
			return false;
		}
	}

}
