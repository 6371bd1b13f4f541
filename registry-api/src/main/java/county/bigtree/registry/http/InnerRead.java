package county.bigtree.registry.http;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Enumeration;
import java.util.LinkedHashMap;
import java.util.Map;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.util.MultiValueMap;
import org.springframework.web.util.UriComponents;
import org.springframework.web.util.UriComponentsBuilder;
import org.springframework.web.util.UriUtils;

/**
 * A read of another address of the service, for whoever sent the request at hand, which
 * it leaves as it is.
 */
class InnerRead extends HttpServletRequestWrapper {

	private final UriComponents address;

	private final Map<String, Object> attributes = new LinkedHashMap<>();

	InnerRead(HttpServletRequest asking, String address) {
		super(asking);
		this.address = UriComponentsBuilder.fromUriString(address).build();
	}

	@Override
	public String getMethod() {
		return "GET";
	}

	@Override
	public String getRequestURI() {
		return String.valueOf(this.address.getPath());
	}

	@Override
	public StringBuffer getRequestURL() {
		return new StringBuffer(getRequestURI());
	}

	@Override
	public String getServletPath() {
		return getRequestURI();
	}

	@Override
	public @Nullable String getPathInfo() {
		return null;
	}

	@Override
	public @Nullable String getQueryString() {
		return this.address.getQuery();
	}

	@Override
	public @Nullable String getParameter(String name) {
		String[] values = getParameterValues(name);
		return (values != null) ? values[0] : null;
	}

	@Override
	public Map<String, String[]> getParameterMap() {
		Map<String, String[]> parameters = new LinkedHashMap<>();
		MultiValueMap<String, String> query = this.address.getQueryParams();
		query.forEach((name, values) -> parameters.put(decoded(name),
				values.stream().map(InnerRead::decoded).toArray(String[]::new)));
		return parameters;
	}

	private static String decoded(@Nullable String value) {
		return (value != null) ? UriUtils.decode(value, StandardCharsets.UTF_8) : "";
	}

	@Override
	public Enumeration<String> getParameterNames() {
		return Collections.enumeration(getParameterMap().keySet());
	}

	@Override
	public String @Nullable [] getParameterValues(String name) {
		return getParameterMap().get(name);
	}

	@Override
	public @Nullable String getHeader(String name) {
		return name.equalsIgnoreCase(HttpHeaders.ACCEPT) ? null : super.getHeader(name);
	}

	@Override
	public Enumeration<String> getHeaders(String name) {
		return name.equalsIgnoreCase(HttpHeaders.ACCEPT) ? Collections.emptyEnumeration() : super.getHeaders(name);
	}

	@Override
	public @Nullable Object getAttribute(String name) {
		return this.attributes.get(name);
	}

	@Override
	public void setAttribute(String name, @Nullable Object value) {
		if (value == null) {
			this.attributes.remove(name);
		}
		else {
			this.attributes.put(name, value);
		}
	}

	@Override
	public void removeAttribute(String name) {
		this.attributes.remove(name);
	}

	@Override
	public Enumeration<String> getAttributeNames() {
		return Collections.enumeration(this.attributes.keySet());
	}

}
