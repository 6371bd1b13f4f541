package county.bigtree.db;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class EmbeddedDatabaseRecoveryIT {

	private static final long ROWS = 200;

	private final ScratchFolder scratch = ScratchFolder.create();

	private final Path folder = this.scratch.path();

	@BeforeEach
	void share() throws IOException {
		this.scratch.shareTheProgramsToSaveTime();
	}

	@AfterEach
	void remove() throws IOException {
		this.scratch.close();
	}

	@Test
	void takesOverTheServerThatAKilledServiceLeftRunning() throws Exception {
		try (ServiceProcess service = ServiceProcess.start(this.folder)) {
			service.awaitAcknowledged(ROWS);
			ProcessHandle leftBehind = service.database();
			service.kill();
			assertThat(leftBehind.isAlive()).isTrue();
			long acknowledged = service.lastAcknowledged();
			try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
				assertThat(leftBehind.onExit()).succeedsWithin(Duration.ofSeconds(10));
				assertHoldsAll(database, acknowledged);
			}
		}
	}

	@Test
	void recoversFromTheDeathOfServiceAndDatabase() throws Exception {
		try (ServiceProcess service = ServiceProcess.start(this.folder)) {
			service.awaitAcknowledged(ROWS);
			service.killDatabase();
			service.kill();
			long acknowledged = service.lastAcknowledged();
			try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
				assertHoldsAll(database, acknowledged);
			}
		}
	}

	@Test
	void leavesTheFolderOfALivingServiceAloneAlsoWhenItsDatabaseDied() throws Exception {
		try (ServiceProcess service = ServiceProcess.start(this.folder)) {
			service.awaitAcknowledged(ROWS);
			assertThatThrownBy(() -> EmbeddedDatabase.start(this.folder)).isInstanceOf(DatabaseUnavailable.class)
				.hasMessageContaining("is in use by a running registry (process " + service.pid() + ")");
			assertThat(service.database().isAlive()).isTrue();
			service.killDatabase();
			assertThatThrownBy(() -> EmbeddedDatabase.start(this.folder)).isInstanceOf(DatabaseUnavailable.class)
				.hasMessageContaining("is in use by a running registry");
		}
		EmbeddedDatabase.start(this.folder).close();
	}

	@Test
	void isNotMisledByAProcessNumberThatNowBelongsToAnother() throws Exception {
		EmbeddedDatabase.start(this.folder).close();
		String ours = ProcessHandle.current().pid() + "\n" + this.folder.resolve("database") + "\n0\n5432\n\n\n";
		Files.writeString(this.folder.resolve("database").resolve("postmaster.pid"), ours);
		try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
			assertThat(new Sql(database.service()).get("select current_user")).isEqualTo(EmbeddedDatabase.SERVICE_ROLE);
		}
	}

	@Test
	void startsAfreshAfterACreationThatWasCutShort() throws Exception {
		Path half = Files.createDirectories(this.folder.resolve("database-new-1"));
		Files.writeString(half.resolve("PG_VERSION"), "18\n");
		EmbeddedDatabase.start(this.folder).close();
		assertThat(half).doesNotExist();
		assertThat(this.folder.resolve("database").resolve("PG_VERSION")).exists();
	}

	@Test
	void stopsCleanly() throws Exception {
		EmbeddedDatabase database = EmbeddedDatabase.start(this.folder);
		new Sql(database.owner()).execute("create table filing (number bigint primary key)");
		database.close();
		assertThat(Files.readString(this.folder.resolve("database.log"))).contains("database system is shut down");
		try (EmbeddedDatabase again = EmbeddedDatabase.start(this.folder)) {
			assertThat(new Sql(again.owner()).get("select count(*) from filing")).isEqualTo("0");
		}
		assertThat(Files.readString(this.folder.resolve("database.log"))).doesNotContain("not properly shut down");
	}

	private static void assertHoldsAll(EmbeddedDatabase database, long acknowledged) throws SQLException {
		Sql owner = new Sql(database.owner());
		assertThat(acknowledged).isGreaterThanOrEqualTo(ROWS);
		assertThat(owner.get("select count(*) from filing where number <= " + acknowledged))
			.isEqualTo(Long.toString(acknowledged));
		assertThat(Long.parseLong(owner.get("select max(number) from filing"))).isLessThanOrEqualTo(acknowledged + 1);
	}

}
