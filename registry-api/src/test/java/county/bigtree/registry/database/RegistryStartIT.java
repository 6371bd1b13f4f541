package county.bigtree.registry.database;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.db.EmbeddedDatabase;
import county.bigtree.db.TestDatabase;
import county.bigtree.registry.RegistryApplication;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class RegistryStartIT {

	private final Path folder;

	RegistryStartIT(@TempDir Path folder) {
		this.folder = folder;
	}

	@Test
	void keepsItsDataInAFolderAndStopsTheDatabaseWithTheService() {
		String option = "--registry.data-folder=" + this.folder;
		Path running = this.folder.resolve("database").resolve("postmaster.pid");
		try (ConfigurableApplicationContext service = start(option)) {
			assertThat(running).exists();
			assertWorksWithTheRightsOfAService(service, EmbeddedDatabase.SERVICE_ROLE);
		}
		assertThat(running).doesNotExist();
		EmbeddedDatabase.start(this.folder).close();
	}

	@Test
	void worksOnTheDatabaseItIsGivenWithALoginForTheOwnerAndOneForItself() {
		try (TestDatabase given = TestDatabase.empty()) {
			DatabaseLogin login = given.service();
			DatabaseLogin owner = given.owner();
			try (ConfigurableApplicationContext service = start("--spring.datasource.url=" + login.jdbcUrl(),
					"--spring.datasource.username=" + login.user(), "--spring.datasource.password=" + login.password(),
					"--spring.flyway.user=" + owner.user(), "--spring.flyway.password=" + owner.password())) {
				assertThat(service.getBeansOfType(EmbeddedDatabase.class)).isEmpty();
				assertWorksWithTheRightsOfAService(service, login.user());
			}
		}
	}

	@Test
	void worksOnTheDatabaseItIsGivenWithOneLogin() {
		try (TestDatabase given = TestDatabase.empty()) {
			DatabaseLogin login = given.owner();
			try (ConfigurableApplicationContext service = start("--spring.datasource.url=" + login.jdbcUrl(),
					"--spring.datasource.username=" + login.user(),
					"--spring.datasource.password=" + login.password())) {
				JdbcClient client = service.getBean(JdbcClient.class);
				assertThat(client.sql("select current_user").query(String.class).single()).isEqualTo(login.user());
				assertThatThrownBy(() -> client.sql("truncate changeable_table").update())
					.hasMessageContaining("Rows of changeable_table are written once: truncate is refused");
			}
		}
	}

	@Test
	void saysInOneLineWhyItsDatabaseIsUnavailable() throws Exception {
		Path database = Files.createDirectories(this.folder.resolve("database"));
		Files.writeString(database.resolve("PG_VERSION"), "17\n");
		FailedStart start = FailedStart.of(this.folder, "--registry.data-folder=" + this.folder);
		assertThat(start.exitCode()).isEqualTo(1);
		assertThat(start.errors()).singleElement().asString().contains("holds a database of PostgreSQL 17");
		assertThat(start.output()).noneMatch((line) -> line.startsWith("\tat "));
	}

	@Test
	void saysInOneLineThatTheDatabaseItIsGivenCannotBeReached() throws Exception {
		FailedStart start = FailedStart.of(this.folder,
				"--spring.datasource.url=jdbc:postgresql://127.0.0.1:" + closedPort() + "/registry",
				"--spring.datasource.username=registry");
		assertThat(start.exitCode()).isEqualTo(1);
		assertThat(start.errors()).singleElement()
			.asString()
			.startsWith("The database can't be reached (")
			.doesNotContain("secret");
		assertThat(start.output()).noneMatch((line) -> line.startsWith("\tat "));
	}

	private static void assertWorksWithTheRightsOfAService(ConfigurableApplicationContext service, String role) {
		JdbcClient client = service.getBean(JdbcClient.class);
		assertThat(client.sql("select current_user").query(String.class).single()).isEqualTo(role);
		assertThat(
				client.sql("select count(*) from flyway_schema_history where not success").query(Long.class).single())
			.isZero();
		assertThatThrownBy(() -> client.sql("drop table changeable_table").update())
			.isInstanceOf(DataAccessException.class)
			.rootCause()
			.hasMessageContaining("must be owner of table changeable_table");
	}

	private static ConfigurableApplicationContext start(String... options) {
		List<String> arguments = new ArrayList<>(List.of(options));
		arguments.add("--server.port=0");
		return new SpringApplicationBuilder(RegistryApplication.class).run(arguments.toArray(String[]::new));
	}

	private static int closedPort() throws IOException {
		try (ServerSocket socket = new ServerSocket(0)) {
			return socket.getLocalPort();
		}
	}

	/**
	 * A start in a JVM of its own that came to nothing.
	 */
	private record FailedStart(int exitCode, List<String> output, List<String> errors) {

		private static final long PATIENCE_SECONDS = 180;

		static FailedStart of(Path folder, String... options) throws IOException, InterruptedException {
			Path output = folder.resolve("output");
			Path errors = folder.resolve("errors");
			List<String> command = new ArrayList<>(List.of(
					Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
					System.getProperty("java.class.path"), RegistryApplication.class.getName(), "--server.port=0"));
			command.addAll(List.of(options));
			ProcessBuilder builder = new ProcessBuilder(command).redirectOutput(output.toFile())
				.redirectError(errors.toFile());
			builder.environment().put("SPRING_DATASOURCE_PASSWORD", "secret");
			Process process = builder.start();
			assertThat(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
			return new FailedStart(process.exitValue(), Files.readAllLines(output), Files.readAllLines(errors));
		}

	}

}
