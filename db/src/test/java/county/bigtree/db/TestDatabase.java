package county.bigtree.db;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A database for one test, made in moments: an empty one, or one with the newest schema.
 * All come from one server for each JVM, which is the first of these that is there: the
 * one named by the system property {@code registry.test.jdbc-url} (with
 * {@code registry.test.user} and {@code registry.test.password}, a superuser; or
 * environment variables {@code REGISTRY_TEST_JDBC_URL} and so on), a container if a
 * container engine answers, the embedded server. Which one it was is printed.
 */
public final class TestDatabase implements AutoCloseable {

	private static final String TEMPLATE = "registry_template_" + ProcessHandle.current().pid();

	private static final AtomicInteger made = new AtomicInteger();

	private static boolean templateIsThere;

	private final TestServer server;

	private final String name;

	private TestDatabase(TestServer server, String name) {
		this.server = server;
		this.name = name;
	}

	/**
	 * With the newest schema and no rows but reference data.
	 */
	public static synchronized TestDatabase migrated() {
		TestServer server = TestServer.get();
		if (!templateIsThere) {
			TestDatabase template = create(server, TEMPLATE, "template0");
			DatabaseMigrations.migrate(template.owner(), TestServer.SERVICE);
			templateIsThere = true;
		}
		return create(server, nextName(), TEMPLATE);
	}

	/**
	 * With nothing in it.
	 */
	public static synchronized TestDatabase empty() {
		return create(TestServer.get(), nextName(), "template0");
	}

	/**
	 * Has the schema and may change it.
	 */
	public DatabaseLogin owner() {
		return new DatabaseLogin(this.server.url(this.name), TestServer.OWNER, TestServer.PASSWORD);
	}

	/**
	 * May do what the service may.
	 */
	public DatabaseLogin service() {
		return new DatabaseLogin(this.server.url(this.name), TestServer.SERVICE, TestServer.PASSWORD);
	}

	/**
	 * Drops it, ending what sessions there are.
	 */
	@Override
	public void close() {
		this.server.drop(this.name);
	}

	private static String nextName() {
		return "registry_test_" + ProcessHandle.current().pid() + "_" + made.incrementAndGet();
	}

	private static TestDatabase create(TestServer server, String name, String template) {
		try (Connection connection = server.administrator().dataSource().getConnection()) {
			RegistryRoles roles = new RegistryRoles(connection);
			roles.execute("create database " + name + " template " + template + " owner " + TestServer.OWNER);
			roles.admitOnly(name, TestServer.SERVICE);
			server.dropAtEnd(name);
			return new TestDatabase(server, name);
		}
		catch (SQLException ex) {
			throw new IllegalStateException("Could not make the test database " + name, ex);
		}
	}

}
