package county.bigtree.registry.security;

import county.bigtree.registry.http.MapTiles;
import county.bigtree.registry.session.PublicAddress;
import jakarta.servlet.http.HttpServletRequest;

import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;

/**
 * What every answer tells browsers: run and show nothing that is not from here, be framed
 * by nobody, tell others nothing of the address. Caching is seen to elsewhere.
 */
final class SecurityHeaders {

	/** Pages and data. Nothing inline, neither script nor style. */
	private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:%s; "
			+ "font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; "
			+ "frame-ancestors 'none'";

	private static final String FEATURES = "accelerometer=(), camera=(), display-capture=(), geolocation=(self), "
			+ "gyroscope=(), magnetometer=(), microphone=(), midi=(), payment=(), usb=()";

	private static final long YEAR_SECONDS = 31_536_000;

	private SecurityHeaders() {
	}

	static HttpSecurity write(HttpSecurity http, PublicAddress address, MapTiles tiles) {
		return http.headers((headers) -> headers.cacheControl(HeadersConfigurer.CacheControlConfig::disable)
			.frameOptions(HeadersConfigurer.FrameOptionsConfig::deny)
			.contentSecurityPolicy((policy) -> policy.policyDirectives(policy(tiles)))
			.referrerPolicy((policy) -> policy.policy(ReferrerPolicy.SAME_ORIGIN))
			.permissionsPolicyHeader((policy) -> policy.policy(FEATURES))
			.crossOriginOpenerPolicy((policy) -> policy.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
			.crossOriginResourcePolicy((policy) -> policy.policy(CrossOriginResourcePolicy.SAME_ORIGIN))
			.httpStrictTransportSecurity((transport) -> transport.includeSubDomains(false)
				.maxAgeInSeconds(YEAR_SECONDS)
				.requestMatcher((request) -> isSecure(request, address))));
	}

	/** Pictures come from the server of map tiles too, where one is named. */
	static String policy(MapTiles tiles) {
		String origin = tiles.origin();
		return POLICY.formatted((origin != null) ? " " + origin : "");
	}

	private static boolean isSecure(HttpServletRequest request, PublicAddress address) {
		return request.isSecure() || address.isSecure();
	}

}
