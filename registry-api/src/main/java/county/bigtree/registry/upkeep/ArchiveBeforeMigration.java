package county.bigtree.registry.upkeep;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;

import county.bigtree.registry.archive.ArchiveManifest;
import county.bigtree.registry.archive.ArchiveRegister;
import county.bigtree.registry.archive.UnusableArchive;
import county.bigtree.registry.database.BeforeMigration;
import county.bigtree.registry.database.NotMigrated;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.stereotype.Component;

/**
 * Takes an archive before the schema is changed, where there is a folder for it, and
 * keeps the last few. The time is the machine's: nothing of the database is used yet.
 */
@Component
class ArchiveBeforeMigration implements BeforeMigration {

	/** Of those taken before a migration. */
	static final int KEPT = 5;

	private static final Logger logger = LoggerFactory.getLogger(ArchiveBeforeMigration.class);

	private final ArchiveRegister archiveRegister;

	private final ArchiveFolder folder;

	private final ArchiveSettings settings;

	ArchiveBeforeMigration(ArchiveRegister archiveRegister, ArchiveFolder folder, ArchiveSettings settings) {
		this.archiveRegister = archiveRegister;
		this.folder = folder;
		this.settings = settings;
	}

	@Override
	public void run(String version) {
		if (!this.settings.beforeMigration() || this.folder.path().isEmpty()) {
			return;
		}
		try {
			Path file = this.folder.next(ArchiveFolder.BEFORE_MIGRATION, Clock.systemUTC().instant());
			logger.info("The register is of schema {}: it is archived in {} before that is changed", version, file);
			ArchiveManifest written = this.archiveRegister.archive(file, (what, done, of) -> {
			});
			logger.info("Archived: {} rows and {} pictures", written.rows(), written.pictures());
			this.folder.keep(ArchiveFolder.BEFORE_MIGRATION, KEPT);
		}
		catch (IOException | UnusableArchive ex) {
			throw new NotMigrated("The register could not be archived before its schema is changed (" + ex.getMessage()
					+ "): nothing was changed. Make room for it or name another folder with --registry.archive.folder,"
					+ " or archive it yourself and start with --registry.archive.before-migration=false.", ex);
		}
	}

}
