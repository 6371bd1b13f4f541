package county.bigtree.registry.openness;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

import org.junit.jupiter.api.Assumptions;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The programs of GDAL (Debian's {@code gdal-bin}), which read what we write. Where they
 * are missing the tests that need them are skipped, unless the environment variable
 * {@code CI} says that they must run.
 */
final class Gdal {

	private static final int PATIENCE_SECONDS = 60;

	private Gdal() {
	}

	/** What the program says; it must succeed. */
	static String run(String... command) throws Exception {
		boolean found = Stream.of(Objects.requireNonNullElse(System.getenv("PATH"), "").split(File.pathSeparator))
			.anyMatch((folder) -> Files.isExecutable(Path.of(folder, command[0])));
		if (!found && System.getenv("CI") != null) {
			throw new IllegalStateException("These tests must run, but there is no " + command[0] + " on the PATH.");
		}
		Assumptions.assumeTrue(found, "there is no " + command[0] + " on the PATH");
		Path said = Files.createTempFile("gdal", ".txt");
		try {
			Process process = new ProcessBuilder(command).redirectErrorStream(true)
				.redirectOutput(said.toFile())
				.start();
			boolean done = process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
			if (!done) {
				process.destroyForcibly();
			}
			String text = Files.readString(said, StandardCharsets.UTF_8);
			List<String> told = Arrays.asList(command);
			assertThat(done).as("%s is done: %s", told, text).isTrue();
			assertThat(process.exitValue()).as("%s: %s", told, text).isZero();
			assertThat(text).as("%s", told).doesNotContain("ERROR", "Warning");
			return text;
		}
		finally {
			Files.delete(said);
		}
	}

}
