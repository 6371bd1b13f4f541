package county.bigtree.registry.description;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.RegistryApplication;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The page on using the API says what is so: its blocks run, in order, in one shell, on a
 * demo of their own.
 */
@RegistryTest
@TestPropertySource(properties = { "registry.demo=true", "spring.application.name=a demo to write in" })
@DirtiesContext
class UsingTheApiIT {

	private static final Pattern BLOCK = Pattern.compile("```bash\\n(.*?)```", Pattern.DOTALL);

	@LocalServerPort
	private int port;

	@Autowired
	private JdbcConnectionDetails database;

	@Test
	void everyBlockRuns(@TempDir Path folder) throws IOException, InterruptedException {
		StringBuilder script = new StringBuilder("set -eo pipefail\nexport PS4='+ line $LINENO: '\nset -x\n");
		Matcher block = BLOCK.matcher(Files.readString(Path.of("docs/using-the-api.md")));
		int blocks = 0;
		for (; block.find(); blocks++) {
			script.append(block.group(1));
		}
		assertThat(blocks).isGreaterThan(15);
		Path file = Files.writeString(folder.resolve("year.sh"), script.toString());
		Path output = Files.createDirectories(Path.of("target")).resolve("using-the-api.log");
		ProcessBuilder builder = new ProcessBuilder("bash", file.toString()).directory(folder.toFile())
			.redirectErrorStream(true)
			.redirectOutput(output.toFile());
		builder.environment().put("api", "http://127.0.0.1:" + this.port + "/api/v1");
		builder.environment().put("register", program());
		builder.environment().put("served", served(folder));
		Process process = builder.start();
		boolean ended = process.waitFor(6, TimeUnit.MINUTES);
		process.destroy();
		String told = Files.readString(output);
		assertThat(ended && process.exitValue() == 0)
			.as("the script ends well; its last lines: %s", told.substring(Math.max(0, told.length() - 3000)))
			.isTrue();
	}

	/** What the jar is to those who have one. */
	private static String program() {
		String classes = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
		return String.join(" ", Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx256m",
				"-XX:TieredStopAtLevel=1", "-cp", classes, RegistryApplication.class.getName());
	}

	/** The password has blanks, and stands in a file. */
	private String served(Path folder) throws IOException {
		Path secrets = Files.createDirectory(folder.resolve("secrets"));
		Files.writeString(secrets.resolve("spring.datasource.password"),
				Objects.requireNonNull(this.database.getPassword()));
		return String.join(" ", "--spring.datasource.url=" + this.database.getJdbcUrl(),
				"--spring.datasource.username=" + this.database.getUsername(),
				"--spring.config.import=configtree:" + secrets + "/");
	}

}
