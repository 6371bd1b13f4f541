package county.bigtree.registry.openness;

import java.net.URI;

import org.jspecify.annotations.Nullable;

import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/**
 * What whoever runs the service says of its open data. Which licence the data is under is
 * for the counties to decide, so none is stated unless {@code registry.open-data.license}
 * names its address; {@code registry.open-data.country} names the country for those who
 * put the data beside others'.
 */
@Component
public class OpenDataSettings {

	private final @Nullable String license;

	private final @Nullable String country;

	OpenDataSettings(Environment environment) {
		this.license = given(environment, "registry.open-data.license");
		this.country = given(environment, "registry.open-data.country");
		if (this.license != null && !isWebAddress(this.license)) {
			throw new IllegalArgumentException(
					"registry.open-data.license must be the address of a licence's text, not " + this.license);
		}
	}

	private static @Nullable String given(Environment environment, String property) {
		String given = environment.getProperty(property);
		return (given == null || given.isBlank()) ? null : given.strip();
	}

	private static boolean isWebAddress(String text) {
		if (!text.matches("https?://[!-~]+")) {
			return false;
		}
		return URI.create(text).getHost() != null;
	}

	/** The address of the licence's text; null where none is stated. */
	public @Nullable String license() {
		return this.license;
	}

	/** The country in which all counties lie; null where it is not said. */
	@Nullable String country() {
		return this.country;
	}

}
