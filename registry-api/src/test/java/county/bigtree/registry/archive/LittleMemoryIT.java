package county.bigtree.registry.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.db.DatabaseMigrations;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A register many times as large as the memory is archived and restored, by a process of
 * its own whose heap can't hold it.
 */
class LittleMemoryIT {

	private static final String HEAP = "-Xmx40m";

	private static final int MEGABYTES = 150;

	@Test
	void archivesAndRestoresMoreThanFitsIntoMemory(@TempDir Path folder)
			throws IOException, InterruptedException, SQLException {
		Path file = folder.resolve("register.tar.gz");
		try (SmallRegister register = SmallRegister.make(); SmallRegister target = SmallRegister.unused()) {
			fill(register);
			run(folder, "archive", file, register.database().owner(), register);
			run(folder, "restore", file, target.database().owner(), target);
			for (String query : List.of("select count(*) || ' ' || sum(length(body)) from text_body",
					"select count(*) || ' ' || sum(length(body)) from photo_body")) {
				assertThat(target.list(query)).isEqualTo(register.list(query));
			}
		}
	}

	/** Half of it words of 10 kB, half of it pictures of 500 kB. */
	private static void fill(SmallRegister register) throws SQLException {
		register.addPhotos(MEGABYTES / 3, 3, 500_000);
		register.execute(
				"""
						insert into text_piece (id, county, seq, recorded_at, digest)
						select ('20000000-0000-7000-8000-' || lpad(n::text, 12, '0'))::uuid, 'oddly', 1, '2020-03-02Z', sha256('x')
						from generate_series(1, %1$d) n;
						insert into text_body (id, salt, body)
						select ('20000000-0000-7000-8000-' || lpad(n::text, 12, '0'))::uuid, '\\x00', repeat(md5(n::text), 313)
						from generate_series(1, %1$d) n"""
					.formatted(MEGABYTES / 2 * 100));
	}

	private static void run(Path folder, String word, Path file, DatabaseLogin owner, SmallRegister register)
			throws IOException, InterruptedException {
		Path output = folder.resolve(word + ".txt");
		List<String> command = new ArrayList<>(
				List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), HEAP, "-XX:+UseSerialGC",
						"-cp", System.getProperty("java.class.path"), LittleMemoryIT.class.getName(), word,
						file.toString(), owner.jdbcUrl(), owner.user(), register.database().service().user()));
		ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(output.toFile());
		builder.environment().put("TEST_PASSWORD", owner.password());
		Process process = builder.start();
		boolean ended = process.waitFor(10, TimeUnit.MINUTES);
		process.destroy();
		assertThat(ended && process.exitValue() == 0).as(Files.readString(output)).isTrue();
	}

	/**
	 * What the process does.
	 */
	public static void main(String[] arguments) {
		Path file = Path.of(arguments[1]);
		DatabaseLogin owner = new DatabaseLogin(arguments[2], arguments[3],
				Objects.requireNonNull(System.getenv("TEST_PASSWORD")));
		if (arguments[0].equals("archive")) {
			TestArchives.of(owner.dataSource()).archive(file, SmallRegister.SILENT);
		}
		else {
			Flyway migrations = DatabaseMigrations
				.configure(Flyway.configure().dataSource(owner.jdbcUrl(), owner.user(), owner.password()), arguments[4])
				.load();
			SmallRegister.restoring(migrations).restore(file, SmallRegister.SILENT);
		}
	}

}
