package county.bigtree.db;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

import org.jspecify.annotations.Nullable;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * The one server from which a JVM's test databases come.
 */
final class TestServer {

	static final String OWNER = "registry_test_owner";

	static final String SERVICE = "registry_test_service";

	static final String PASSWORD = "only for tests";

	private static @Nullable TestServer instance;

	private final DatabaseLogin administrator;

	private final Set<String> databases = ConcurrentHashMap.newKeySet();

	private TestServer(DatabaseLogin administrator) {
		this.administrator = administrator;
	}

	static synchronized TestServer get() {
		TestServer server = instance;
		if (server == null) {
			server = start();
			server.createRoles();
			instance = server;
		}
		return server;
	}

	DatabaseLogin administrator() {
		return this.administrator;
	}

	String url(String database) {
		return this.administrator.jdbcUrl().replaceFirst("(jdbc:postgresql://[^/]*/)[^?]*", "$1" + database);
	}

	void drop(String database) {
		try (Connection connection = this.administrator.dataSource().getConnection()) {
			new RegistryRoles(connection).execute("drop database if exists " + database + " with (force)");
			this.databases.remove(database);
		}
		catch (SQLException ex) {
			throw new IllegalStateException("Could not drop the test database " + database, ex);
		}
	}

	void dropAtEnd(String database) {
		this.databases.add(database);
	}

	private static TestServer start() {
		String url = setting("jdbc-url");
		if (url != null) {
			say("the server at " + url);
			return given(new DatabaseLogin(url, required("user"), required("password")));
		}
		if (DockerClientFactory.instance().isDockerAvailable()) {
			say("a container of postgres:18");
			return inContainer();
		}
		say("an embedded PostgreSQL " + PostgresBinaries.MAJOR_VERSION + " in a temporary folder, with fsync off");
		return embedded();
	}

	private static TestServer given(DatabaseLogin administrator) {
		TestServer server = new TestServer(administrator);
		atEnd(() -> Set.copyOf(server.databases).forEach(server::drop));
		return server;
	}

	// The container lives as long as the JVM; the library's own reaper removes it.
	@SuppressWarnings("resource")
	private static TestServer inContainer() {
		PostgreSQLContainer container = new PostgreSQLContainer("postgres:18");
		container.start();
		return new TestServer(
				new DatabaseLogin(container.getJdbcUrl(), container.getUsername(), container.getPassword()));
	}

	private static TestServer embedded() {
		try {
			Path folder = Files.createTempDirectory("registry-test-database-");
			Path binaries = PostgresBinaries.unpackInto(Path.of("target", "programs").toAbsolutePath());
			PostgresServer server = new PostgresServer(binaries, ServerAccount.find(), folder.resolve("database"),
					folder.resolve("database.log"));
			Path password = folder.resolve("password");
			Passwords.writeSecret(password, PASSWORD);
			server.create(password);
			int port = freePort();
			server.start(port, ServerSettings.FORGETFUL);
			atEnd(() -> stop(server, folder));
			return new TestServer(new DatabaseLogin("jdbc:postgresql://127.0.0.1:" + port + "/postgres",
					PostgresServer.SUPERUSER, PASSWORD));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private void createRoles() {
		try (Connection connection = this.administrator.dataSource().getConnection()) {
			RegistryRoles roles = new RegistryRoles(connection);
			roles.createRole(OWNER, PASSWORD);
			roles.createRole(SERVICE, PASSWORD);
		}
		catch (SQLException ex) {
			throw new IllegalStateException("Could not make the roles for the tests", ex);
		}
	}

	private static void stop(PostgresServer server, Path folder) {
		try {
			server.stop();
			Folders.delete(folder);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static int freePort() throws IOException {
		try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
			return socket.getLocalPort();
		}
	}

	private static void atEnd(Runnable action) {
		Runtime.getRuntime().addShutdownHook(new Thread(action));
	}

	private static void say(String server) {
		System.out.println("Test databases come from " + server + ".");
	}

	private static String required(String name) {
		return Objects.requireNonNull(setting(name), () -> "registry.test." + name + " is needed beside the address");
	}

	private static @Nullable String setting(String name) {
		String property = "registry.test." + name;
		String variable = property.replace('.', '_').replace('-', '_').toUpperCase(Locale.ROOT);
		String value = System.getProperty(property);
		return (value != null) ? value : System.getenv(variable);
	}

}
