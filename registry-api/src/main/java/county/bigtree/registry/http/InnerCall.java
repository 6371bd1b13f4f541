package county.bigtree.registry.http;

import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;

/**
 * A call of another address of the service, for whoever sent the request at hand. Of that
 * request's headers it has those alone that say who asks.
 */
class InnerCall extends InnerRead {

	private static final List<String> WHO_ASKS = List.of("authorization", "cookie", "host");

	private final HttpMethod method;

	private final HttpHeaders headers;

	private final boolean files;

	/**
	 * Makes one.
	 * @param files whether it brings the files that the request at hand brought
	 */
	InnerCall(HttpServletRequest asking, HttpMethod method, String address, HttpHeaders headers, boolean files) {
		super(asking, address);
		this.method = method;
		this.headers = headers;
		this.files = files;
	}

	@Override
	public String getMethod() {
		return this.method.name();
	}

	@Override
	public @Nullable String getContentType() {
		return this.files ? super.getContentType() : MediaType.APPLICATION_JSON_VALUE;
	}

	@Override
	public @Nullable String getHeader(String name) {
		if (name.equalsIgnoreCase(HttpHeaders.CONTENT_TYPE)) {
			return getContentType();
		}
		String own = this.headers.getFirst(name);
		return (own != null || !isAsked(name)) ? own : super.getHeader(name);
	}

	@Override
	public Enumeration<String> getHeaders(String name) {
		String value = getHeader(name);
		return (value != null) ? Collections.enumeration(List.of(value)) : Collections.emptyEnumeration();
	}

	private static boolean isAsked(String name) {
		return WHO_ASKS.contains(name.toLowerCase(Locale.ROOT));
	}

}
