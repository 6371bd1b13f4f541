package county.bigtree.registry.session;

import java.net.URI;

import org.jspecify.annotations.Nullable;

import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/**
 * The address at which people reach the service, as {@code registry.public-address} names
 * it: {@code https://trees.example.org}. It decides whether cookies go over https alone.
 */
@Component
public class PublicAddress {

	private final @Nullable URI address;

	PublicAddress(Environment environment) {
		this.address = read(environment.getProperty("registry.public-address"));
	}

	public boolean isSecure() {
		return this.address != null && "https".equals(this.address.getScheme());
	}

	public boolean isKnown() {
		return this.address != null;
	}

	/**
	 * The path at this service as people reach it; as it is where no address is known.
	 */
	public String of(String path) {
		return (this.address != null) ? this.address.resolve(path).toString() : path;
	}

	private static @Nullable URI read(@Nullable String given) {
		if (given == null || given.isBlank()) {
			return null;
		}
		URI address = URI.create(given.strip());
		boolean web = "https".equals(address.getScheme()) || "http".equals(address.getScheme());
		if (!web || address.getHost() == null) {
			throw new IllegalArgumentException(
					"registry.public-address must be like https://trees.example.org, not " + given);
		}
		return address;
	}

}
