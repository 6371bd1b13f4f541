package county.bigtree.registry.readcache;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

import county.bigtree.registry.http.ConditionalReads;
import county.bigtree.registry.http.EntityTags;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.http.server.observation.ServerRequestObservationContext;
import org.springframework.web.filter.ServerHttpObservationFilter;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * An answer as it was sent: the same bytes and headers to everyone, as long as the
 * register is of the same version.
 *
 * @param version of what the answer depends on, or of something later
 * @param route by which figures and traces know the address; null where nobody observes
 */
record KeptAnswer(String version, @Nullable String route, String type, String etag, List<Header> headers, byte[] body) {

	/** Of each connection or of the server, or told from the answer again. */
	private static final Set<String> NOT_KEPT = Set.of("content-type", "content-length", "date", "connection",
			"keep-alive", "transfer-encoding", "etag");

	/** What the objects of an answer and of its place take, about. */
	private static final int OVERHEAD_BYTES = 1500;

	/**
	 * What was answered.
	 * @param before names of headers that do not come from this answer
	 * @return null where it is not to be kept: it was refused, or not everyone may have
	 * it
	 */
	static @Nullable KeptAnswer of(String version, HttpServletRequest request, ContentCachingResponseWrapper answer,
			Collection<String> before) {
		String etag = answer.getHeader(HttpHeaders.ETAG);
		String type = answer.getContentType();
		boolean kept = answer.getStatus() == HttpServletResponse.SC_OK && etag != null && type != null
				&& ConditionalReads.PUBLIC.equals(answer.getHeader(HttpHeaders.CACHE_CONTROL))
				&& answer.getHeader(HttpHeaders.SET_COOKIE) == null;
		return (kept && etag != null && type != null) ? new KeptAnswer(version, route(request), type, etag,
				headers(answer, before), answer.getContentAsByteArray()) : null;
	}

	private static @Nullable String route(HttpServletRequest request) {
		return ServerHttpObservationFilter.findObservationContext(request)
			.map(ServerRequestObservationContext::getPathPattern)
			.orElse(null);
	}

	private static List<Header> headers(HttpServletResponse answer, Collection<String> before) {
		Set<String> others = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
		others.addAll(before);
		List<Header> headers = new ArrayList<>();
		for (String name : new TreeSet<>(answer.getHeaderNames())) {
			if (!others.contains(name) && !NOT_KEPT.contains(name.toLowerCase(Locale.ROOT))) {
				answer.getHeaders(name).forEach((value) -> headers.add(new Header(name, value)));
			}
		}
		return List.copyOf(headers);
	}

	boolean isHeld(@Nullable String ifNoneMatch) {
		return ifNoneMatch != null && EntityTags.matches(ifNoneMatch, this.etag);
	}

	void send(HttpServletRequest request, HttpServletResponse response) throws IOException {
		ServerHttpObservationFilter.findObservationContext(request)
			.ifPresent((context) -> context.setPathPattern(this.route));
		boolean held = isHeld(request.getHeader(HttpHeaders.IF_NONE_MATCH));
		for (Header header : this.headers) {
			if (!held || !header.name().equalsIgnoreCase(HttpHeaders.CONTENT_ENCODING)) {
				response.addHeader(header.name(), header.value());
			}
		}
		response.setHeader(HttpHeaders.ETAG, this.etag);
		if (held) {
			response.setStatus(HttpServletResponse.SC_NOT_MODIFIED);
			return;
		}
		response.setContentType(this.type);
		response.setContentLength(this.body.length);
		if (!"HEAD".equals(request.getMethod())) {
			response.getOutputStream().write(this.body);
		}
	}

	int bytes() {
		return this.body.length + OVERHEAD_BYTES;
	}

	/**
	 * A header with one of its values.
	 */
	record Header(String name, String value) {
	}

}
