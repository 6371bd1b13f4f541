package county.bigtree.registry.readcache;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.http.Packed;
import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;

/**
 * A read of standings by who brings neither credentials nor a cookie, so that everyone is
 * answered alike.
 *
 * @param key all that the answer depends on beside the state of the register: address,
 * form, coding, and whether the connection is secure
 * @param scope whose state the answer depends on: a county's, or
 * {@link RegisterVersions#ALL}
 */
record PublicRead(String key, String scope) {

	private static final String PREFIX = "/api/v1/counties/";

	private static final Pattern PATH = Pattern.compile(PREFIX
			+ "([a-z0-9-]{1,80})/(?:(standings|species/[a-z0-9-]{1,120}/standing)|species/[a-z0-9-]{1,120}/titles)");

	private static final Pattern QUERY = Pattern.compile("[A-Za-z0-9=&:._%+-]{1,400}");

	/**
	 * Asks about the present. What is asked of the past may tell of trees that stand in
	 * another county today, which is where it is decided how they are shown.
	 */
	private static final Pattern PRESENT = Pattern.compile("limit=[0-9]{1,4}");

	private static final int LONGEST_ACCEPT = 200;

	static Optional<PublicRead> of(HttpServletRequest request) {
		String path = request.getRequestURI();
		if (!path.startsWith(PREFIX) || !isRead(request.getMethod())
				|| request.getHeader(HttpHeaders.AUTHORIZATION) != null
				|| request.getHeader(HttpHeaders.COOKIE) != null) {
			return Optional.empty();
		}
		Matcher named = PATH.matcher(path);
		String query = request.getQueryString();
		String accept = request.getHeader(HttpHeaders.ACCEPT);
		boolean odd = (query == null) ? request.getParameterNames().hasMoreElements()
				: !QUERY.matcher(query).matches() || accept != null && accept.length() > LONGEST_ACCEPT;
		if (odd || !named.matches()) {
			return Optional.empty();
		}
		boolean present = named.group(2) != null && (query == null || PRESENT.matcher(query).matches());
		return Optional
			.of(new PublicRead(key(request, path, query, accept), present ? named.group(1) : RegisterVersions.ALL));
	}

	private static boolean isRead(String method) {
		return "GET".equals(method) || "HEAD".equals(method);
	}

	private static String key(HttpServletRequest request, String path, @Nullable String query,
			@Nullable String accept) {
		return path + '?' + query + '\n' + accept + (Packed.isTaken(request) ? "\ngzip" : "\n")
				+ (request.isSecure() ? "\nsecure" : "");
	}

}
