package county.bigtree.registry.database;

import county.bigtree.db.DatabaseMigrations;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;

/**
 * Brings the schema up to date before anything uses it.
 */
@Configuration(proxyBeanMethods = false)
class Migrating {

	/**
	 * Does it, unless whatever runs takes the schema as it finds it.
	 */
	@Bean
	FlywayMigrationStrategy bringUpToDate(Environment environment, ObjectProvider<BeforeMigration> before) {
		if (environment.getProperty("registry.migrate-at-start", Boolean.class, true)) {
			return (flyway) -> {
				DatabaseMigrations.version(flyway)
					.filter((version) -> flyway.info().pending().length > 0)
					.ifPresent((version) -> before.orderedStream().forEach((work) -> work.run(version)));
				DatabaseMigrations.bringUpToDate(flyway);
			};
		}
		return (flyway) -> {
		};
	}

}
