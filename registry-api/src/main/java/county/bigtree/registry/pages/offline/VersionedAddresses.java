package county.bigtree.registry.pages.offline;

import java.io.IOException;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpServletResponseWrapper;

import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Has pages name scripts and style by the addresses of this release. It stands behind the
 * filters of security, which leave addresses as they are.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE)
class VersionedAddresses extends OncePerRequestFilter {

	private final ShellVersion version;

	VersionedAddresses(ShellVersion version) {
		this.version = version;
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		chain.doFilter(request, new HttpServletResponseWrapper(response) {
			@Override
			public String encodeURL(String url) {
				return ShellVersion.isOfShell(url) ? VersionedAddresses.this.version.path() + url
						: super.encodeURL(url);
			}
		});
	}

}
