package county.bigtree.registry.http;

import java.io.IOException;
import java.util.Locale;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemAnswers;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Keeps the body of a request, so that it can be hashed, and read anew when the request
 * is tried again. Refuses one of more than {@value #MOST_BYTES} bytes. Files (multipart)
 * and the forms of pages have limits of their own and can be read again as they are.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE - 90)
class RequestBodies extends OncePerRequestFilter {

	static final int MOST_BYTES = 1 << 20;

	private final ProblemAnswers answers;

	RequestBodies(ProblemAnswers answers) {
		this.answers = answers;
	}

	@Override
	protected boolean shouldNotFilter(HttpServletRequest request) {
		String type = request.getContentType();
		return switch (request.getMethod()) {
			case "GET", "HEAD", "OPTIONS" -> true;
			default -> type != null && isForm(type.toLowerCase(Locale.ROOT));
		};
	}

	private static boolean isForm(String type) {
		return type.startsWith("multipart/") || type.startsWith("application/x-www-form-urlencoded");
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		byte[] body = (request.getContentLengthLong() > MOST_BYTES) ? null
				: request.getInputStream().readNBytes(MOST_BYTES + 1);
		if (body == null || body.length > MOST_BYTES) {
			this.answers.write(
					Problem.of(ProblemType.TOO_LARGE, "At most " + MOST_BYTES + " bytes are taken in one request."),
					request, response);
			return;
		}
		chain.doFilter(new KeptBody(request, body), response);
	}

}
