package county.bigtree.registry.http;

import java.io.IOException;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.web.util.ContentCachingResponseWrapper;

/**
 * An answer as it was given, to be given again.
 *
 * @param status 2xx
 * @param revision of the resource answered with, where it has one; the ETag follows from
 * it and the bytes
 */
record KeyedAnswer(int status, @Nullable String contentType, @Nullable String location, @Nullable Long revision,
		byte[] body) {

	static final String REPLAYED = "Idempotent-Replayed";

	static KeyedAnswer of(HttpServletRequest request, ContentCachingResponseWrapper given) {
		return new KeyedAnswer(given.getStatus(), given.getContentType(), given.getHeader(HttpHeaders.LOCATION),
				EntityTags.revision(request), given.getContentAsByteArray());
	}

	void give(HttpServletRequest request, HttpServletResponse response) throws IOException {
		response.setStatus(this.status);
		response.setHeader(REPLAYED, "true");
		if (this.contentType != null) {
			response.setContentType(this.contentType);
		}
		if (this.location != null) {
			response.setHeader(HttpHeaders.LOCATION, this.location);
		}
		if (this.revision != null) {
			EntityTags.setRevision(request, this.revision);
		}
		response.getOutputStream().write(this.body);
	}

}
