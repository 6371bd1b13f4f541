package county.bigtree.db;

import java.io.IOException;
import java.nio.file.Files;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class RunningDatabaseIT {

	@Test
	void isFoundWhileItIsServedAndNotAfterwards() throws Exception {
		try (ScratchFolder scratch = ScratchFolder.create()) {
			scratch.shareTheProgramsToSaveTime();
			assertThat(RunningDatabase.find(scratch.path())).isEmpty();
			try (EmbeddedDatabase database = EmbeddedDatabase.start(scratch.path())) {
				DatabaseLogin found = RunningDatabase.find(scratch.path()).orElseThrow();
				assertThat(found.jdbcUrl()).isEqualTo(database.service().jdbcUrl());
				assertThat(new Sql(found).get("select current_user")).isEqualTo(EmbeddedDatabase.SERVICE_ROLE);
			}
			assertThat(RunningDatabase.find(scratch.path())).isEmpty();
		}
	}

	@Test
	void isNotFoundByWhatAnEndedServiceLeft() throws IOException {
		try (ScratchFolder scratch = ScratchFolder.create()) {
			Files.createDirectories(scratch.path().resolve("database"));
			Files.writeString(scratch.path().resolve("in-use"), "1");
			Files.writeString(scratch.path().resolve("database").resolve("postmaster.pid"), "1\n/x\n0\n5432\n");
			assertThat(RunningDatabase.find(scratch.path())).isEmpty();
		}
	}

}
