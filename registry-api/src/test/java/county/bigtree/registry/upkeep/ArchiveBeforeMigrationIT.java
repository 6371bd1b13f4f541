package county.bigtree.registry.upkeep;

import java.nio.file.Files;
import java.nio.file.Path;

import county.bigtree.db.DatabaseMigrations;
import county.bigtree.db.TestDatabase;
import county.bigtree.registry.archive.TestArchives;
import county.bigtree.registry.database.NotMigrated;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * The archive of a register as an earlier release left it.
 */
class ArchiveBeforeMigrationIT {

	@Test
	void archivesTheEarlierSchemaOrRefuses(@TempDir Path folder) throws Exception {
		try (TestDatabase database = TestDatabase.empty()) {
			DatabaseMigrations.bringTo(
					DatabaseMigrations
						.configure(Flyway.configure().dataSource(database.owner().dataSource()),
								DatabaseMigrations.NO_SERVICE_ROLE)
						.load(),
					"202611261050");
			before(database, folder, true).run("202611261050");
			before(database, folder.resolve("other"), false).run("202611261050");
			assertThat(new ArchiveFolder(folder).files(ArchiveFolder.BEFORE_MIGRATION)).hasSize(1);
			assertThat(folder.resolve("other")).doesNotExist();
			Path taken = Files.createFile(folder.resolve("taken"));
			assertThatThrownBy(() -> before(database, taken, true).run("202611261050")).isInstanceOf(NotMigrated.class)
				.hasMessageContaining("nothing was changed");
		}
	}

	private static ArchiveBeforeMigration before(TestDatabase database, Path folder, boolean on) {
		return new ArchiveBeforeMigration(TestArchives.of(database.owner().dataSource()), new ArchiveFolder(folder),
				new ArchiveSettings(folder, 1, true, on, true));
	}

}
