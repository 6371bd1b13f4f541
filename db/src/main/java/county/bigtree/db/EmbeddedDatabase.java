package county.bigtree.db;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A PostgreSQL server of the register's own, with its data in a folder that is kept. What
 * it acknowledges is on the disk: the settings this needs are asked of the server at each
 * start. It answers on the loopback address only, to generated passwords.
 * <p>
 * A folder belongs to one living service at a time. What an earlier service left there,
 * however it ended, a server still running included, is brought in order by the next
 * start. All failures are {@link DatabaseUnavailable}.
 */
public final class EmbeddedDatabase implements AutoCloseable {

	/** Has the schema and changes it. */
	public static final String OWNER_ROLE = "registry_owner";

	/** Works in the schema and can't change it. */
	public static final String SERVICE_ROLE = "registry_service";

	static final String DATABASE = "registry";

	private static final Logger logger = LoggerFactory.getLogger(EmbeddedDatabase.class);

	private static final Duration PATIENCE = Duration.ofSeconds(60);

	private static final int ATTEMPTS = 5;

	private static final String INVALID_PASSWORD = "28P01";

	private final DataFolder folder;

	private final PostgresServer server;

	private final Passwords passwords;

	private int port;

	private EmbeddedDatabase(DataFolder folder, PostgresServer server, Passwords passwords) {
		this.folder = folder;
		this.server = server;
		this.passwords = passwords;
	}

	/**
	 * Starts on any free port.
	 */
	public static EmbeddedDatabase start(Path folder) {
		return start(folder, 0);
	}

	/**
	 * Starts on the port given, or on any free one if it is 0.
	 */
	public static EmbeddedDatabase start(Path folder, int port) {
		OtherMajor.find(folder).ifPresent((other) -> {
			throw other.refusal();
		});
		return start(folder, port, Optional.empty());
	}

	/**
	 * Starts what is there, to archive it: also a database of an earlier major version of
	 * PostgreSQL, by the programs of the release that wrote it, if they still lie beside
	 * it.
	 */
	public static EmbeddedDatabase startAsWritten(Path folder, int port) {
		Optional<OtherMajor> other = OtherMajor.find(folder);
		Optional<Path> programs = other.flatMap(OtherMajor::programs);
		if (other.isPresent() && programs.isEmpty()) {
			throw other.get().refusal();
		}
		return start(folder, port, programs);
	}

	private static EmbeddedDatabase start(Path folder, int port, Optional<Path> programs) {
		DataFolder held = DataFolder.open(folder);
		try {
			EmbeddedDatabase database = prepare(held, programs);
			database.startServer(port);
			database.open();
			return database;
		}
		catch (IOException ex) {
			held.close();
			throw DataFolder.unusable(held.path(), ex);
		}
		catch (RuntimeException ex) {
			held.close();
			throw ex;
		}
	}

	public DatabaseLogin owner() {
		return new DatabaseLogin(url(DATABASE), OWNER_ROLE, this.passwords.owner());
	}

	public DatabaseLogin service() {
		return new DatabaseLogin(url(DATABASE), SERVICE_ROLE, this.passwords.service());
	}

	public int port() {
		return this.port;
	}

	/**
	 * Stops the server with a checkpoint and lets go of the folder.
	 */
	@Override
	public void close() {
		try {
			this.server.stop();
		}
		catch (IOException ex) {
			logger.warn("The embedded database did not stop in time; the next start will see to it", ex);
		}
		finally {
			this.folder.close();
		}
	}

	private static EmbeddedDatabase prepare(DataFolder folder, Optional<Path> programs) throws IOException {
		Path binaries = programs.isPresent() ? programs.get()
				: PostgresBinaries.unpackInto(folder.path().resolve("programs"));
		ServerAccount account = ServerAccount.find();
		PostgresServer server = new PostgresServer(binaries, account, folder.database(), folder.log());
		Passwords passwords = passwords(folder, server.exists());
		folder.turnLog();
		if (!server.exists()) {
			create(folder, server, passwords);
		}
		return new EmbeddedDatabase(folder, server, passwords);
	}

	private static Passwords passwords(DataFolder folder, boolean databaseExists) throws IOException {
		Path file = folder.passwords();
		if (Files.exists(file)) {
			return Passwords.read(file);
		}
		if (databaseExists) {
			throw new DatabaseUnavailable(
					"The file " + file + " with the database's passwords is missing: put it back from your backup.");
		}
		Passwords passwords = Passwords.generate();
		passwords.write(file);
		return passwords;
	}

	private static void create(DataFolder folder, PostgresServer server, Passwords passwords) throws IOException {
		Path fresh = folder.freshDatabase();
		Path superuserPassword = folder.path().resolve("superuser.password");
		Passwords.writeSecret(superuserPassword, passwords.superuser());
		try {
			new PostgresServer(server.binaries(), server.account(), fresh, server.log()).create(superuserPassword);
		}
		catch (ServerRefusal refusal) {
			throw notStarted(folder, "could not be created", refusal);
		}
		finally {
			Files.deleteIfExists(superuserPassword);
		}
		Files.move(fresh, folder.database(), StandardCopyOption.ATOMIC_MOVE);
	}

	private void startServer(int wantedPort) throws IOException {
		for (int attempt = 1; this.port == 0; attempt++) {
			stopLeftBehindServer();
			int candidate = (wantedPort == 0) ? freePort() : wantedPort;
			try {
				this.server.start(candidate, ServerSettings.DURABLE);
				this.port = candidate;
			}
			catch (ServerRefusal refusal) {
				boolean portTaken = refusal.says("could not bind") || refusal.says("Address already in use");
				if (portTaken && wantedPort != 0) {
					throw new DatabaseUnavailable("Port " + wantedPort + " is taken by another program: stop that one,"
							+ " or give another port with --registry.database-port.", refusal);
				}
				boolean mayPass = portTaken || refusal.says("lock file \"postmaster.pid\" already exists")
						|| refusal.says("pre-existing shared memory block");
				if (!mayPass || attempt == ATTEMPTS) {
					throw notStarted(this.folder, "did not start", refusal);
				}
			}
		}
	}

	/**
	 * We hold the folder's lock, so whatever runs there has lost its service.
	 */
	private void stopLeftBehindServer() throws IOException {
		ServerProcesses processes = new ServerProcesses(this.folder.database());
		Optional<ProcessHandle> postmaster = processes.findPostmaster();
		if (postmaster.isPresent()) {
			logger.info("Stopping the database server (process {}) that an earlier service left running",
					postmaster.get().pid());
			this.server.stop();
		}
		try {
			if (!processes.awaitNone(PATIENCE)) {
				throw new DatabaseUnavailable("A process of an earlier database server still works in "
						+ this.folder.database() + ": end it, then start again.");
			}
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			throw new DatabaseUnavailable("The start of the database was interrupted: start again.", ex);
		}
		processes.forgetReusedNumber();
	}

	private void open() throws IOException {
		try {
			createRolesAndDatabase();
			requireDurability();
		}
		catch (SQLException ex) {
			this.server.stop();
			if (INVALID_PASSWORD.equals(ex.getSQLState())) {
				throw new DatabaseUnavailable("The passwords in " + this.folder.passwords()
						+ " do not open the database beside it: put the file back from your backup.", ex);
			}
			throw new DatabaseUnavailable("The embedded database started but can't be used (" + ex.getMessage()
					+ "): see " + this.folder.log() + ".", ex);
		}
		catch (DatabaseUnavailable ex) {
			this.server.stop();
			throw ex;
		}
	}

	private void createRolesAndDatabase() throws SQLException {
		DatabaseLogin superuser = new DatabaseLogin(url("postgres"), PostgresServer.SUPERUSER,
				this.passwords.superuser());
		try (Connection connection = superuser.dataSource().getConnection()) {
			RegistryRoles roles = new RegistryRoles(connection);
			roles.createRole(OWNER_ROLE, this.passwords.owner());
			roles.createRole(SERVICE_ROLE, this.passwords.service());
			roles.createDatabase(DATABASE, OWNER_ROLE, SERVICE_ROLE);
		}
	}

	private void requireDurability() throws SQLException {
		try (Connection connection = service().dataSource().getConnection();
				Statement statement = connection.createStatement()) {
			for (Map.Entry<String, String> wanted : ServerSettings.DURABLE.entrySet()) {
				try (ResultSet answer = statement.executeQuery("show " + wanted.getKey())) {
					answer.next();
					if (!wanted.getValue().equals(answer.getString(1))) {
						throw new DatabaseUnavailable("The database in " + this.folder.database() + " runs with "
								+ wanted.getKey() + " = " + answer.getString(1)
								+ ", which may lose acknowledged writes: remove that setting from"
								+ " postgresql.auto.conf there.");
					}
				}
			}
		}
	}

	private String url(String database) {
		return "jdbc:postgresql://127.0.0.1:" + this.port + "/" + database;
	}

	private static DatabaseUnavailable notStarted(DataFolder folder, String what, ServerRefusal refusal) {
		if (refusal.says("No space left on device")) {
			return DataFolder.unusable(folder.path(), refusal);
		}
		return new DatabaseUnavailable(
				"The embedded database " + what + " (it said: " + refusal.reason() + "): see " + folder.log() + ".",
				refusal);
	}

	private static int freePort() throws IOException {
		try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
			return socket.getLocalPort();
		}
	}

}
