package county.bigtree.registry.upkeep;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;

import county.bigtree.db.TestDatabase;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.archive.TestArchives;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * An archive on trial: restored by processes of their own into a PostgreSQL of their own,
 * and looked through there.
 */
@RegistryTest
class TryRestoreIT {

	private static final LocalDate MONTH = LocalDate.of(2092, 2, 1);

	@Autowired
	private Recording recording;

	@Autowired
	private UpkeepRuns runs;

	@Autowired
	private Troubles troubles;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void restoresTheNewestOnceAMonthAndSaysWhenThatFails(@TempDir Path path) throws Exception {
		ArchiveFolder folder = new ArchiveFolder(path);
		TryRestore trial = new TryRestore(folder, new ArchiveSettings(path, 1, true, true, true), this.recording);
		trial.run(MONTH);
		assertThat(this.runs.lastWell(UpkeepRun.TRIAL)).isEmpty();
		Path archive = folder.next(ArchiveFolder.DAILY, Instant.parse("2092-02-01T01:00:00Z"));
		try (TestDatabase database = TestDatabase.migrated()) {
			TestArchives.of(database.service().dataSource()).archive(archive, (what, done, of) -> {
			});
		}
		trial.run(MONTH);
		trial.run(MONTH);
		UpkeepRun run = this.runs.lastWell(UpkeepRun.TRIAL).orElseThrow();
		assertThat(run.dueOn()).isEqualTo(MONTH);
		assertThat(run.detail()).isEqualTo("daily-20920201T010000Z.tar.gz was restored and is whole");
		try (RandomAccessFile file = new RandomAccessFile(archive.toFile(), "rw")) {
			file.setLength(Files.size(archive) / 2);
		}
		trial.run(MONTH.plusMonths(1));
		assertThat(this.troubles.open()).anyMatch((trouble) -> trouble.kind().equals("trial-failed"));
		assertThat(path.toFile().list()).containsExactly("daily-20920201T010000Z.tar.gz");
		this.jdbc.sql("delete from upkeep_run").update();
		this.jdbc.sql("delete from upkeep_trouble").update();
	}

}
