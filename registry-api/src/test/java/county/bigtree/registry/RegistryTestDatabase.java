package county.bigtree.registry;

import java.util.Map;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.db.TestDatabase;

import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.MapPropertySource;

/**
 * Gives the service under test a fresh database with the newest schema, which it uses
 * with no more rights than it has in earnest.
 */
public class RegistryTestDatabase implements ApplicationContextInitializer<ConfigurableApplicationContext> {

	@Override
	public void initialize(ConfigurableApplicationContext context) {
		TestDatabase database = TestDatabase.migrated();
		DatabaseLogin login = database.service();
		DatabaseLogin owner = database.owner();
		context.getEnvironment()
			.getPropertySources()
			.addFirst(new MapPropertySource("test database",
					Map.of("spring.datasource.url", login.jdbcUrl(), "spring.datasource.username", login.user(),
							"spring.datasource.password", login.password(), "spring.flyway.enabled", "false",
							"spring.flyway.user", owner.user(), "spring.flyway.password", owner.password())));
	}

}
