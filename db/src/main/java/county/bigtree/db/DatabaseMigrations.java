package county.bigtree.db;

import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.configuration.FluentConfiguration;

/**
 * Brings a database's schema up to this release. Applied migrations are never edited and
 * never undone; a schema is never emptied.
 */
public final class DatabaseMigrations {

	/** Stands for a register that works with its owner's login alone. */
	public static final String NO_SERVICE_ROLE = "";

	private static final int OLDEST_MAJOR_VERSION = 15;

	private static final int NEWEST_MAJOR_VERSION = 18;

	private static final Set<MigrationState> NEWER = Set.of(MigrationState.FUTURE_SUCCESS,
			MigrationState.FUTURE_FAILED);

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
		return bringUpToDate(configure(configuration, serviceRole).load());
	}

	/**
	 * Everything but the data source, for those who set up Flyway themselves.
	 */
	public static FluentConfiguration configure(FluentConfiguration configuration, String serviceRole) {
		return configuration.locations("classpath:db/migration")
			.placeholders(Map.of("serviceRole", serviceRole))
			.validateMigrationNaming(true)
			.cleanDisabled(true);
	}

	/**
	 * Migrates a database that this release can work on, and refuses any other.
	 * @return how many migrations were applied
	 * @throws DatabaseUnavailable if it can't be reached, is no PostgreSQL of a supported
	 * version, was written by a newer release, or a migration fails
	 */
	public static int bringUpToDate(Flyway flyway) {
		requireSupportedServer(flyway);
		try {
			requireNotNewer(flyway);
			return flyway.migrate().migrationsExecuted;
		}
		catch (FlywayException ex) {
			throw new DatabaseUnavailable("The schema of the database could not be brought up to this release ("
					+ oneLine(ex) + "): nothing of the failed step was kept; mend the cause, then start again.", ex);
		}
	}

	/**
	 * The version of a database's schema; nothing where it has none yet. Only reads.
	 * @throws DatabaseUnavailable if it can't be reached, is no PostgreSQL of a supported
	 * version, or was written by a newer release
	 */
	public static Optional<String> version(Flyway flyway) {
		requireSupportedServer(flyway);
		try {
			requireNotNewer(flyway);
			return Optional.ofNullable(flyway.info().current())
				.map(MigrationInfo::getVersion)
				.map(MigrationVersion::getVersion);
		}
		catch (FlywayException ex) {
			throw new DatabaseUnavailable("The history of the database's schema can't be read (" + oneLine(ex)
					+ "): name a database of a register, or an empty one.", ex);
		}
	}

	/**
	 * The version to which this release brings a schema.
	 */
	public static String newestVersion(Flyway flyway) {
		return Stream.of(flyway.info().all())
			.filter((migration) -> migration.getVersion() != null && !NEWER.contains(migration.getState()))
			.map(MigrationInfo::getVersion)
			.max(Comparator.naturalOrder())
			.map(MigrationVersion::getVersion)
			.orElseThrow();
	}

	/**
	 * Migrates an empty schema as far as an earlier release did, so that what that one
	 * wrote can be put into it. Nobody is granted anything: {@link #bringUpToDate} has to
	 * follow.
	 */
	public static void bringTo(Flyway flyway, String version) {
		requireSupportedServer(flyway);
		try {
			requireNotNewer(flyway);
			Flyway.configure()
				.configuration(flyway.getConfiguration())
				.target(version)
				.skipDefaultCallbacks(true)
				.load()
				.migrate();
		}
		catch (FlywayException ex) {
			throw new DatabaseUnavailable("The schema could not be brought to version " + version + " (" + oneLine(ex)
					+ "): give the register an empty database.", ex);
		}
	}

	private static void requireSupportedServer(Flyway flyway) {
		try (Connection connection = flyway.getConfiguration().getDataSource().getConnection()) {
			requireSupported(connection);
		}
		catch (SQLException ex) {
			throw new DatabaseUnavailable("The database can't be reached (" + oneLine(ex)
					+ "): see that its server runs, and check --spring.datasource.url, --spring.datasource.username"
					+ " and --spring.datasource.password.", ex);
		}
	}

	static void requireSupported(Connection connection) throws SQLException {
		DatabaseMetaData server = connection.getMetaData();
		int version = server.getDatabaseMajorVersion();
		if (!server.getDatabaseProductName().equals("PostgreSQL") || version < OLDEST_MAJOR_VERSION
				|| version > NEWEST_MAJOR_VERSION) {
			throw new DatabaseUnavailable("The database is " + server.getDatabaseProductName() + " " + version
					+ ", but this release needs PostgreSQL " + OLDEST_MAJOR_VERSION + " to " + NEWEST_MAJOR_VERSION
					+ ": name such a server with --spring.datasource.url.");
		}
	}

	private static void requireNotNewer(Flyway flyway) {
		boolean newer = Stream.of(flyway.info().all()).anyMatch((migration) -> NEWER.contains(migration.getState()));
		if (newer) {
			throw new DatabaseUnavailable("The database was written by a newer release than this one: start that"
					+ " release, or restore an archive that this one wrote into an empty database.");
		}
	}

	private static String oneLine(Exception ex) {
		return String.valueOf(ex.getMessage()).strip().replaceAll("\\s*\\R\\s*", " ");
	}

}
