package county.bigtree.registry.standby;

import org.jspecify.annotations.Nullable;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.StringUtils;

/**
 * Where standbys of the register's database are.
 *
 * @param url JDBC address of one or several hosts; nothing is read from standbys where it
 * is not given
 * @param username that of {@code spring.datasource} where not given
 * @param password that of {@code spring.datasource} where not given
 * @param connections at most so many at once, 1 to 1000
 */
@ConfigurationProperties("registry.standby")
record StandbySettings(@DefaultValue("") String url, @Nullable String username, @Nullable String password,
		@DefaultValue("8") int connections) {

	private static final int MOST_CONNECTIONS = 1000;

	StandbySettings {
		if (StringUtils.hasText(url) && !url.startsWith("jdbc:postgresql:")) {
			throw new IllegalArgumentException("registry.standby.url must begin with jdbc:postgresql:");
		}
		if (connections < 1 || connections > MOST_CONNECTIONS) {
			throw new IllegalArgumentException(
					"registry.standby.connections must be from 1 to " + MOST_CONNECTIONS + ", not " + connections);
		}
	}

}
