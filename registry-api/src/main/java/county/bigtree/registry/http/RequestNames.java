package county.bigtree.registry.http;

import java.io.IOException;
import java.util.UUID;

import county.bigtree.registry.problem.RequestName;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.slf4j.MDC;

import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Gives each request a name of its own, which stands in every line of the log that is
 * written meanwhile, in the answer's {@code Request-Id} and in problems. A name that the
 * request brings along is not taken: whoever sends it could make two requests look like
 * one.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class RequestNames extends OncePerRequestFilter {

	private static final String IN_LOG = "request";

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		String name = UUID.randomUUID().toString();
		RequestName.give(request, name);
		RequestName.tell(request, response);
		MDC.put(IN_LOG, name);
		try {
			chain.doFilter(request, response);
		}
		finally {
			MDC.remove(IN_LOG);
		}
	}

	/** The container asks once more for the page of a failure. */
	@Override
	protected boolean shouldNotFilterErrorDispatch() {
		return false;
	}

	@Override
	protected void doFilterNestedErrorDispatch(HttpServletRequest request, HttpServletResponse response,
			FilterChain chain) throws ServletException, IOException {
		chain.doFilter(request, response);
	}

}
