package county.bigtree.registry.http;

import java.io.IOException;
import java.util.regex.Pattern;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * Gives reads their ETag, packs them for who takes that, answers 304 to who already has
 * the bytes, and says how long an answer may be kept: what anyone may read may be stored
 * but must be revalidated, the rest is kept by nobody. Runs inside the security filters,
 * so that it knows who asks.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE - 100)
public class ConditionalReads extends OncePerRequestFilter {

	/** How long what anyone may read may be kept. */
	public static final String PUBLIC = "public, max-age=0, must-revalidate";

	private static final String PRIVATE = "private, no-store";

	/**
	 * Files of any length, which are not to be held in memory: they are tagged as they
	 * are written.
	 */
	private static final Pattern FILES = Pattern
		.compile("/exports/(journal\\.jsonl|[^/]+/((standings|trees|scores)\\.csv|trees\\.geojson|dwca\\.zip))");

	@Override
	protected boolean shouldNotFilter(HttpServletRequest request) {
		String path = request.getRequestURI();
		return path.startsWith("/webjars/") || path.startsWith("/assets/") || FILES.matcher(path).matches();
	}

	@Override
	protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
			throws ServletException, IOException {
		ContentCachingResponseWrapper kept = new ContentCachingResponseWrapper(response);
		chain.doFilter(request, kept);
		if (request.isAsyncStarted()) {
			throw new IllegalStateException("answers are complete when the handler returns");
		}
		boolean read = isRead(request);
		boolean found = kept.getStatus() == HttpServletResponse.SC_OK;
		if (!kept.containsHeader(HttpHeaders.CACHE_CONTROL)) {
			boolean anyone = read && found && request.getUserPrincipal() == null;
			kept.setHeader(HttpHeaders.CACHE_CONTROL, anyone ? PUBLIC : PRIVATE);
		}
		if (read && found || EntityTags.revision(request) != null && kept.getStatus() < 300) {
			byte[] body = kept.getContentAsByteArray();
			boolean packed = read && Packed.is(request, kept, body.length);
			String plain = EntityTags.of(body, EntityTags.revision(request));
			String etag = packed ? Packed.tag(plain) : plain;
			kept.setHeader(HttpHeaders.ETAG, etag);
			if (read) {
				response.addHeader(HttpHeaders.VARY, "Accept, Accept-Encoding, Authorization, Cookie");
			}
			String held = request.getHeader(HttpHeaders.IF_NONE_MATCH);
			if (read && held != null && EntityTags.matches(held, etag)) {
				response.setStatus(HttpServletResponse.SC_NOT_MODIFIED);
				return;
			}
			if (packed && "GET".equals(request.getMethod())) {
				Packed.write(body, response);
				return;
			}
		}
		kept.copyBodyToResponse();
	}

	private static boolean isRead(HttpServletRequest request) {
		return "GET".equals(request.getMethod()) || "HEAD".equals(request.getMethod());
	}

}
