package county.bigtree.registry.security;

import java.util.List;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.AbstractAuthenticationToken;
import org.springframework.security.authentication.BadCredentialsException;

/**
 * An access token as it came with a request, not yet looked up (RFC 6750, 2.1).
 */
final class BearerToken extends AbstractAuthenticationToken {

	private static final String SCHEME = "Bearer ";

	private final String token;

	private BearerToken(String token) {
		super(List.of());
		this.token = token;
	}

	/** Null for a request without credentials; other credentials than a token fail. */
	static @Nullable BearerToken from(HttpServletRequest request) {
		String header = request.getHeader(HttpHeaders.AUTHORIZATION);
		if (header == null) {
			return null;
		}
		if (!header.regionMatches(true, 0, SCHEME, 0, SCHEME.length())) {
			throw new BadCredentialsException("not a bearer token");
		}
		return new BearerToken(header.substring(SCHEME.length()).trim());
	}

	@Override
	public String getPrincipal() {
		return "";
	}

	@Override
	public String getCredentials() {
		return this.token;
	}

}
