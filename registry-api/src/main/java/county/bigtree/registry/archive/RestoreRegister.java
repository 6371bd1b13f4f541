package county.bigtree.registry.archive;

import java.io.InputStream;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import java.util.Optional;

import county.bigtree.db.DatabaseMigrations;
import county.bigtree.registry.photo.store.MovePictures;
import county.bigtree.registry.photo.store.StoreAway;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationVersion;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;

/**
 * Makes an empty register into the one that an archive holds. The schema is brought to
 * the version that was archived, all rows are put in by one transaction, and the
 * migrations that came since run on them. Interrupted before the end of that transaction
 * it leaves an empty register, and can be begun again; after it, a register that is whole
 * and that the next start brings up to date.
 */
@Service
public class RestoreRegister {

	private final ObjectProvider<Flyway> migrations;

	private final PasswordEncoder passwords;

	private final ObjectProvider<MovePictures> pictures;

	/**
	 * Makes it for a database.
	 * @param migrations as the owner of the schema
	 * @param pictures are moved to where new ones are kept
	 */
	RestoreRegister(ObjectProvider<Flyway> migrations, PasswordEncoder passwords,
			ObjectProvider<MovePictures> pictures) {
		this.migrations = migrations;
		this.passwords = passwords;
		this.pictures = pictures;
	}

	/**
	 * Restores the register.
	 * @throws UnusableArchive if the file is no whole archive, or the register is not
	 * empty; nothing was changed then
	 */
	public ArchiveManifest restore(Path file, ArchiveProgress progress) {
		Flyway flyway = this.migrations.getObject();
		Optional<String> present = DatabaseMigrations.version(flyway);
		try {
			if (present.isPresent()) {
				requireEmpty(flyway);
			}
			ArchiveReader reader = new ArchiveReader(file, progress);
			Check check = new Check(DatabaseMigrations.newestVersion(flyway), present);
			ArchiveReader.Read read = reader.read("bytes checked", check);
			DatabaseMigrations.bringTo(flyway, read.head().schemaVersion());
			load(flyway, file, read, progress);
			DatabaseMigrations.bringUpToDate(flyway);
			analyse(flyway);
			movePictures(progress, read.manifest().pictures());
			return read.manifest();
		}
		catch (SQLException ex) {
			throw new UnusableArchive(
					"The archive could not be put into the database (" + ex.getMessage() + "): it is empty as before.",
					ex);
		}
	}

	private void load(Flyway flyway, Path file, ArchiveReader.Read checked, ArchiveProgress progress)
			throws SQLException {
		try (Connection connection = flyway.getConfiguration().getDataSource().getConnection()) {
			connection.setAutoCommit(false);
			try {
				LoadRows loading = LoadRows.begin(connection, checked, progress);
				ArchiveReader.Read read = new ArchiveReader(file, (what, done, of) -> {
				}).read("", loading);
				if (!read.equals(checked)) {
					throw new UnusableArchive("The file " + file + " was changed while it was read.");
				}
				loading.finish(nobodysPassword());
				connection.commit();
			}
			finally {
				connection.rollback();
				connection.setAutoCommit(true);
			}
		}
	}

	private void movePictures(ArchiveProgress progress, long all) {
		try {
			this.pictures.ifAvailable((move) -> move
				.toWhereNewOnesGo((moved) -> progress.at("pictures to the object store", moved, all)));
		}
		catch (StoreAway ex) {
			throw new UnusableArchive(
					"The register was restored, with pictures left in the database: \"move-photos store\" "
							+ "moves them once the object store takes them. " + ex.getMessage() + ".",
					ex);
		}
	}

	private static void requireEmpty(Flyway flyway) throws SQLException {
		try (Connection connection = flyway.getConfiguration().getDataSource().getConnection()) {
			EmptyRegister.require(connection);
		}
	}

	/** A hash that takes as long to compare as any other, of what nobody knows. */
	private String nobodysPassword() {
		byte[] unknown = new byte[32];
		new SecureRandom().nextBytes(unknown);
		return String.valueOf(this.passwords.encode(HexFormat.of().formatHex(unknown)));
	}

	/**
	 * The server plans by what it knows of its tables, and knows nothing of these yet.
	 */
	private static void analyse(Flyway flyway) throws SQLException {
		try (Connection connection = flyway.getConfiguration().getDataSource().getConnection();
				Statement statement = connection.createStatement()) {
			for (RegisterTable table : RegisterTables.read(connection)) {
				statement.execute("analyze " + RegisterTable.quoted(table.name()));
			}
		}
	}

	/**
	 * Reads an archive through before anything is done with it.
	 */
	private record Check(String newest, Optional<String> present) implements ArchiveReader.Members {

		@Override
		public void begin(ArchiveHead head) {
			if (isLater(head.schemaVersion(), this.newest)) {
				throw new UnusableArchive("The archive was written by a newer release (" + head.release() + ", schema "
						+ head.schemaVersion() + "; this release knows up to " + this.newest
						+ "): restore it with that release or a later one.");
			}
			if (this.present.filter((version) -> isLater(version, head.schemaVersion())).isPresent()) {
				throw new UnusableArchive(
						"The archive is of schema " + head.schemaVersion() + ", and this database has been brought to "
								+ this.present.get() + " already: give one that no release has been started on.");
			}
		}

		@Override
		public void take(String name, InputStream content) {
			// Reading it through is all there is to do.
		}

		private static boolean isLater(String version, String than) {
			return MigrationVersion.fromVersion(version).isNewerThan(than);
		}

	}

}
