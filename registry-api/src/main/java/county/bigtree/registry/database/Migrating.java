package county.bigtree.registry.database;

import county.bigtree.db.DatabaseMigrations;

import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * Brings the schema up to date before anything uses it.
 */
@Configuration(proxyBeanMethods = false)
class Migrating {

	@Bean
	FlywayMigrationStrategy bringUpToDate() {
		return DatabaseMigrations::bringUpToDate;
	}

}
