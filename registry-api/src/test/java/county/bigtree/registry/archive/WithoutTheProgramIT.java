package county.bigtree.registry.archive;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import county.bigtree.db.DatabaseLogin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

/**
 * An archive is read by programs that know nothing of registers: tar and sha256sum (GNU),
 * psql and Python, as the page on archives and the guide within each say.
 */
class WithoutTheProgramIT {

	private static final Pattern BLOCK = Pattern.compile("```bash\\n(.*?)```", Pattern.DOTALL);

	@Test
	void tarAndSha256sumFindWhatTheManifestSays(@TempDir Path folder)
			throws IOException, InterruptedException, SQLException {
		Path file = folder.resolve("register.tar.gz");
		ArchiveManifest manifest;
		try (SmallRegister register = SmallRegister.make()) {
			register.addPhotos(5, 3, 2000);
			manifest = register.archive(file);
		}
		for (ArchiveManifest.Group group : manifest.groups()) {
			assertThat(run(folder, Map.of(), "tar -xzOf register.tar.gz " + group.path() + " | sha256sum"))
				.isEqualTo(group.sha256() + "  -\n");
		}
		assertThat(run(folder, Map.of(), "tar -tzf register.tar.gz | tail -1")).isEqualTo("manifest.json\n");
	}

	@Test
	void psqlMakesADatabaseOfIt(@TempDir Path folder) throws IOException, InterruptedException, SQLException {
		assumeTrue(System.getenv("CI") != null || isOnThePath("psql"), "psql is not on the PATH");
		try (SmallRegister register = SmallRegister.make(); SmallRegister empty = SmallRegister.nothing()) {
			// Before its version 18, psql takes a line of \\. for the end of the file,
			// even within
			// quotes (PostgreSQL 18 release notes, migration).
			register.execute("delete from text_body where body like E'%\\n\\\\\\\\.\\n%'");
			register.archive(folder.resolve("register.tar.gz"));
			run(folder, Map.of(), "tar -xzf register.tar.gz");
			Matcher block = BLOCK.matcher(Files.readString(Path.of("docs/archive.md")));
			assertThat(block.find()).isTrue();
			run(folder, environment(empty.database().owner()), "set -eo pipefail\n" + block.group(1));
			for (String query : new String[] { "select body from text_body order by id", "select t::text from tree t",
					"select s::text from score s order by id", "select c::text from county c",
					"select count(*)::text from species_name", "select m::text from measurement m" }) {
				assertThat(empty.list(query)).as(query).isEqualTo(register.list(query)).isNotEmpty();
			}
		}
	}

	private static Map<String, String> environment(DatabaseLogin login) {
		URI address = URI.create(login.jdbcUrl().replaceFirst("jdbc:", "").replaceFirst("\\?.*", ""));
		return Map.of("PGHOST", address.getHost(), "PGPORT", Integer.toString(address.getPort()), "PGDATABASE",
				address.getPath().substring(1), "PGUSER", login.user(), "PGPASSWORD", login.password());
	}

	private static boolean isOnThePath(String program) {
		return Stream.of(Objects.requireNonNullElse(System.getenv("PATH"), "").split(File.pathSeparator, -1))
			.anyMatch((folder) -> Files.isExecutable(Path.of(folder, program)));
	}

	private static String run(Path folder, Map<String, String> environment, String script)
			throws IOException, InterruptedException {
		Path output = Files.createTempFile(folder, "output", ".txt");
		ProcessBuilder builder = new ProcessBuilder("bash", "-c", script).directory(folder.toFile())
			.redirectErrorStream(true)
			.redirectOutput(output.toFile());
		builder.environment().putAll(environment);
		Process process = builder.start();
		boolean ended = process.waitFor(5, TimeUnit.MINUTES);
		process.destroy();
		assertThat(ended && process.exitValue() == 0).as(Files.readString(output)).isTrue();
		return Files.readString(output);
	}

}
