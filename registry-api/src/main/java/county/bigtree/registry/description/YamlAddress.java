package county.bigtree.registry.description;

import java.io.IOException;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Leads {@code /openapi.yaml} to where the library has the YAML form. No forward: that
 * would close the answer before the filters have written it.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class YamlAddress extends OncePerRequestFilter {

	private static final String OURS = "/openapi.yaml";

	private static final String THEIRS = "/openapi.json.yaml";

	@Override
	protected boolean shouldNotFilter(HttpServletRequest request) {
		return !request.getRequestURI().equals(OURS);
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		chain.doFilter(new HttpServletRequestWrapper(request) {

			@Override
			public String getRequestURI() {
				return THEIRS;
			}

			@Override
			public StringBuffer getRequestURL() {
				String url = super.getRequestURL().toString();
				return new StringBuffer(url.substring(0, url.length() - OURS.length()) + THEIRS);
			}

			@Override
			public String getServletPath() {
				return THEIRS;
			}

		}, response);
	}

}
