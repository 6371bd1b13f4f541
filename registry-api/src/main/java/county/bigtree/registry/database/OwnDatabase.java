package county.bigtree.registry.database;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.db.DatabaseMigrations;
import county.bigtree.db.EmbeddedDatabase;

import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.flyway.autoconfigure.FlywayConfigurationCustomizer;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;

/**
 * Starts the embedded PostgreSQL when no other is named. All that uses it depends on its
 * bean, so it is stopped after the pool is closed.
 */
@Configuration(proxyBeanMethods = false)
@Conditional(GivenDatabase.IsAbsent.class)
@EnableConfigurationProperties(RegisterStorage.class)
class OwnDatabase {

	@Bean(destroyMethod = "close")
	EmbeddedDatabase embeddedDatabase(RegisterStorage storage) {
		return storage.databaseAsWritten()
				? EmbeddedDatabase.startAsWritten(storage.dataFolder(), storage.databasePort())
				: EmbeddedDatabase.start(storage.dataFolder(), storage.databasePort());
	}

	@Bean
	OwnFolder ownFolder(RegisterStorage storage) {
		return new OwnFolder(storage.dataFolder());
	}

	@Bean
	JdbcConnectionDetails serviceConnection(EmbeddedDatabase database) {
		return new ServiceConnection(database.service());
	}

	@Bean
	FlywayConnectionDetails ownerConnection(EmbeddedDatabase database) {
		return new OwnerConnection(database.owner());
	}

	@Bean
	FlywayConfigurationCustomizer registryMigrations() {
		return (configuration) -> DatabaseMigrations.configure(configuration, EmbeddedDatabase.SERVICE_ROLE);
	}

	private record ServiceConnection(DatabaseLogin login) implements JdbcConnectionDetails {

		@Override
		public String getJdbcUrl() {
			return this.login.jdbcUrl();
		}

		@Override
		public String getUsername() {
			return this.login.user();
		}

		@Override
		public String getPassword() {
			return this.login.password();
		}

	}

	private record OwnerConnection(DatabaseLogin login) implements FlywayConnectionDetails {

		@Override
		public String getJdbcUrl() {
			return this.login.jdbcUrl();
		}

		@Override
		public String getUsername() {
			return this.login.user();
		}

		@Override
		public String getPassword() {
			return this.login.password();
		}

	}

}
