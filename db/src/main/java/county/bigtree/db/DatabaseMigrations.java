package county.bigtree.db;

import java.util.Map;

import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.configuration.FluentConfiguration;

/**
 * Brings a database's schema up to this release. Applied migrations are never edited and
 * never undone; a schema is never emptied.
 */
public final class DatabaseMigrations {

	/** Stands for a register that works with its owner's login alone. */
	public static final String NO_SERVICE_ROLE = "";

	private DatabaseMigrations() {
	}

	/**
	 * Migrates as the owner and grants the service role what it needs.
	 * @param serviceRole may be the owner's own, or {@link #NO_SERVICE_ROLE}: then
	 * nothing is granted, and only the triggers guard what is written once
	 * @return how many migrations were applied
	 */
	public static int migrate(DatabaseLogin owner, String serviceRole) {
		FluentConfiguration configuration = Flyway.configure()
			.dataSource(owner.jdbcUrl(), owner.user(), owner.password());
		return configure(configuration, serviceRole).load().migrate().migrationsExecuted;
	}

	/**
	 * Everything but the data source, for those who run Flyway themselves.
	 */
	public static FluentConfiguration configure(FluentConfiguration configuration, String serviceRole) {
		return configuration.locations("classpath:db/migration")
			.placeholders(Map.of("serviceRole", serviceRole))
			.validateMigrationNaming(true)
			.cleanDisabled(true);
	}

}
