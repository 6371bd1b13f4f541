package county.bigtree.registry.security;

import java.net.URI;
import java.util.Set;

import org.jspecify.annotations.Nullable;

import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * The one OpenID provider by which people may sign in, and what the register is known by
 * there. The secret comes from the environment or a file, as others do.
 *
 * @param issuer as the provider's discovery document names it; over https, but for one on
 * this machine (OpenID Connect Core 1.0, section 2)
 */
@ConfigurationProperties("registry.openid")
record OpenIdSettings(@Nullable String issuer, @Nullable String clientId, @Nullable String clientSecret) {

	private static final Set<String> HERE = Set.of("127.0.0.1", "[::1]", "localhost");

	OpenIdSettings {
		needed("issuer", issuer);
		needed("client-id", clientId);
		needed("client-secret", clientSecret);
		URI address = URI.create(String.valueOf(issuer));
		boolean safe = "https".equals(address.getScheme())
				|| "http".equals(address.getScheme()) && HERE.contains(String.valueOf(address.getHost()));
		if (!safe || address.getHost() == null) {
			throw new IllegalArgumentException(
					"registry.openid.issuer must be like https://accounts.example.org, not " + issuer);
		}
	}

	private static void needed(String name, @Nullable String value) {
		if (value == null || value.isBlank()) {
			throw new IllegalArgumentException("registry.openid." + name
					+ " is missing: signing in by a provider takes issuer, client-id and client-secret");
		}
	}

}
