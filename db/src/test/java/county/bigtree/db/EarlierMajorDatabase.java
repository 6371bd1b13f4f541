package county.bigtree.db;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Objects;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * A data folder as a release leaves it that brought an earlier major version of
 * PostgreSQL: with that one's programs and a database made by them. Served until it is
 * closed.
 */
public final class EarlierMajorDatabase implements AutoCloseable {

	private static final String PACKED = "postgres-linux-x86_64.txz";

	private final PostgresServer server;

	private final Passwords passwords;

	private final int port;

	private EarlierMajorDatabase(PostgresServer server, Passwords passwords, int port) {
		this.server = server;
		this.passwords = passwords;
		this.port = port;
	}

	/**
	 * Makes one.
	 * @param major of the programs
	 * @param packedPrograms the jar that holds them
	 */
	public static EarlierMajorDatabase create(Path folder, int major, Path packedPrograms) throws IOException {
		Path programs = PostgresBinaries.unpackInto(folder.resolve("programs"), major, packed(packedPrograms));
		PostgresServer server = new PostgresServer(programs, ServerAccount.find(), folder.resolve("database"),
				folder.resolve("database.log"));
		Passwords passwords = Passwords.generate();
		passwords.write(folder.resolve("database.passwords"));
		Path superuserPassword = folder.resolve("superuser.password");
		Passwords.writeSecret(superuserPassword, passwords.superuser());
		server.create(superuserPassword);
		Files.delete(superuserPassword);
		int port = freePort();
		server.start(port, ServerSettings.FORGETFUL);
		EarlierMajorDatabase database = new EarlierMajorDatabase(server, passwords, port);
		database.createRolesAndDatabase();
		return database;
	}

	public DatabaseLogin owner() {
		return new DatabaseLogin(url(EmbeddedDatabase.DATABASE), EmbeddedDatabase.OWNER_ROLE, this.passwords.owner());
	}

	public DatabaseLogin service() {
		return new DatabaseLogin(url(EmbeddedDatabase.DATABASE), EmbeddedDatabase.SERVICE_ROLE,
				this.passwords.service());
	}

	@Override
	public void close() throws IOException {
		this.server.stop();
	}

	private void createRolesAndDatabase() throws IOException {
		try (Connection connection = new DatabaseLogin(url("postgres"), PostgresServer.SUPERUSER,
				this.passwords.superuser())
			.dataSource()
			.getConnection()) {
			RegistryRoles roles = new RegistryRoles(connection);
			roles.createRole(EmbeddedDatabase.OWNER_ROLE, this.passwords.owner());
			roles.createRole(EmbeddedDatabase.SERVICE_ROLE, this.passwords.service());
			roles.createDatabase(EmbeddedDatabase.DATABASE, EmbeddedDatabase.OWNER_ROLE, EmbeddedDatabase.SERVICE_ROLE);
		}
		catch (SQLException ex) {
			this.server.stop();
			throw new IOException(ex);
		}
	}

	private String url(String database) {
		return "jdbc:postgresql://127.0.0.1:" + this.port + "/" + database;
	}

	private static byte[] packed(Path jar) throws IOException {
		try (ZipFile file = new ZipFile(jar.toFile())) {
			ZipEntry entry = Objects.requireNonNull(file.getEntry(PACKED));
			try (InputStream content = file.getInputStream(entry)) {
				return content.readAllBytes();
			}
		}
	}

	private static int freePort() throws IOException {
		try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
			return socket.getLocalPort();
		}
	}

}
