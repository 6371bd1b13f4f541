package county.bigtree.db;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

class EmbeddedDatabaseIT {

	private static final String INVALID_PASSWORD = "28P01";

	private final ScratchFolder scratch = ScratchFolder.create();

	private final Path folder = this.scratch.path();

	@AfterEach
	void remove() throws IOException {
		this.scratch.close();
	}

	@Test
	void unpacksItsOwnProgramsAndKeepsAcknowledgedWrites() throws SQLException {
		try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
			Sql service = new Sql(database.service());
			assertThat(this.folder.resolve("programs")).isDirectoryContaining("glob:**/postgresql-18-*");
			assertThat(service.get("show fsync")).isEqualTo("on");
			assertThat(service.get("show synchronous_commit")).isEqualTo("on");
			assertThat(service.get("show full_page_writes")).isEqualTo("on");
			assertThat(service.get("show server_version")).startsWith(PostgresBinaries.MAJOR_VERSION + ".");
		}
	}

	@Test
	void refusesToRunWithSettingsThatLoseAcknowledgedWrites() throws IOException {
		this.scratch.shareTheProgramsToSaveTime();
		EmbeddedDatabase.start(this.folder).close();
		Files.writeString(this.folder.resolve("database").resolve("postgresql.auto.conf"), "fsync = off\n",
				StandardOpenOption.APPEND);
		assertRefused("runs with fsync = off, which may lose acknowledged writes");
		assertThat(this.folder.resolve("database").resolve("postmaster.pid")).doesNotExist();
	}

	@Test
	void answersOnLoopbackOnlyAndOnlyToItsPasswords() throws Exception {
		this.scratch.shareTheProgramsToSaveTime();
		try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
			DatabaseLogin service = database.service();
			assertThat(new Sql(new DatabaseLogin(service.jdbcUrl(), service.user(), "guess")).outcome("select 1"))
				.isEqualTo(INVALID_PASSWORD);
			assertThat(new Sql(new DatabaseLogin(service.jdbcUrl(), PostgresServer.SUPERUSER, "postgres"))
				.outcome("select 1")).isEqualTo(INVALID_PASSWORD);
			assertThat(new Sql(service).get("show listen_addresses")).isEqualTo("127.0.0.1");
			assertThat(new Sql(superuser(database)).get("show unix_socket_directories")).isEmpty();
			assertThat(new Sql(superuser(database)).list("select auth_method from pg_hba_file_rules")).isNotEmpty()
				.containsOnly("scram-sha-256");
		}
		assertThat(
				PosixFilePermissions.toString(Files.getPosixFilePermissions(this.folder.resolve("database.passwords"))))
			.isEqualTo("rw-------");
		assertThat(this.folder.resolve("superuser.password")).doesNotExist();
	}

	@Test
	void givesNeitherRoleMoreThanItNeeds() throws Exception {
		this.scratch.shareTheProgramsToSaveTime();
		try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
			DatabaseMigrations.migrate(database.owner(), EmbeddedDatabase.SERVICE_ROLE);
			assertThat(new Sql(database.service())
				.list("select rolname from pg_roles where rolname like 'registry%' and (rolsuper or rolcreaterole"
						+ " or rolcreatedb or rolbypassrls or rolreplication)"))
				.isEmpty();
			assertThat(new Sql(database.service()).outcome("create table own (body text)")).isEqualTo("42501");
			assertThat(new Sql(database.service()).outcome("select from changeable_table")).isEqualTo(Sql.DONE);
		}
	}

	@Test
	void writesNoValueOfARowIntoItsLog() throws Exception {
		this.scratch.shareTheProgramsToSaveTime();
		try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
			Sql owner = new Sql(database.owner());
			owner.execute("create table person (email text unique)");
			owner.execute("insert into person values ('reader@example.org')");
			assertThat(owner.outcome("insert into person values ('reader@example.org')")).isEqualTo("23505");
		}
		assertThat(Files.readString(this.folder.resolve("database.log"))).contains("person_email_key")
			.doesNotContain("reader@example.org");
	}

	@Test
	void refusesASecondServiceInTheSameFolder() throws Exception {
		this.scratch.shareTheProgramsToSaveTime();
		try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
			assertRefused("is in use by a running registry");
			assertThat(new Sql(database.service()).get("select 1")).isEqualTo("1");
		}
	}

	@Test
	void refusesAFolderThatCannotBeWritten() throws IOException {
		Path file = Files.writeString(this.folder.resolve("file"), "not a folder");
		assertThatThrownBy(() -> EmbeddedDatabase.start(file.resolve("data"))).isInstanceOf(DatabaseUnavailable.class)
			.hasMessageContaining("can't be written")
			.hasMessageEndingWith("give another folder with --registry.data-folder.");
	}

	@Test
	void refusesTheFolderOfAnotherMajorVersion() throws IOException {
		Path database = Files.createDirectories(this.folder.resolve("database"));
		Files.writeString(database.resolve("PG_VERSION"), "17\n");
		assertRefused("holds a database of PostgreSQL 17, but this release brings PostgreSQL 18");
	}

	@Test
	void refusesATakenPort() throws IOException {
		this.scratch.shareTheProgramsToSaveTime();
		try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
			assertThatThrownBy(() -> EmbeddedDatabase.start(this.folder, taken.getLocalPort()))
				.isInstanceOf(DatabaseUnavailable.class)
				.hasMessage("Port " + taken.getLocalPort() + " is taken by another program: stop that one, or give"
						+ " another port with --registry.database-port.");
		}
		EmbeddedDatabase.start(this.folder).close();
	}

	@Test
	void refusesADatabaseWhosePasswordsAreLost() throws IOException {
		this.scratch.shareTheProgramsToSaveTime();
		EmbeddedDatabase.start(this.folder).close();
		Files.delete(this.folder.resolve("database.passwords"));
		assertRefused("with the database's passwords is missing: put it back from your backup");
		Passwords.generate().write(this.folder.resolve("database.passwords"));
		assertRefused("do not open the database beside it: put the file back from your backup");
	}

	@Test
	void passesOnWhatTheServerSaysWhenItDoesNotStart() throws IOException {
		this.scratch.shareTheProgramsToSaveTime();
		EmbeddedDatabase.start(this.folder).close();
		Files.delete(this.folder.resolve("database").resolve("global").resolve("pg_control"));
		assertRefused("The embedded database did not start (it said: ");
	}

	@Test
	void runsAsNobodyWhereRootMayNotOpenANamespace() throws IOException {
		this.scratch.shareTheProgramsToSaveTime();
		assumeThat(ServerAccount.find()).as("the tests run as root").isNotEqualTo(ServerAccount.SAME_USER);
		assumeThat(ServerAccount.NOBODY.works()).isTrue();
		EmbeddedDatabase.start(this.folder).close();
		Path binaries = PostgresBinaries.unpackInto(this.folder.resolve("programs"));
		PostgresServer server = new PostgresServer(binaries, ServerAccount.NOBODY, this.folder.resolve("database"),
				this.folder.resolve("database.log"));
		server.start(freePort(), ServerSettings.DURABLE);
		server.stop();
		EmbeddedDatabase.start(this.folder).close();
	}

	private void assertRefused(String words) {
		assertThatThrownBy(() -> EmbeddedDatabase.start(this.folder)).isInstanceOf(DatabaseUnavailable.class)
			.hasMessageContaining(words);
	}

	private DatabaseLogin superuser(EmbeddedDatabase database) throws IOException {
		return new DatabaseLogin(database.service().jdbcUrl(), PostgresServer.SUPERUSER,
				Passwords.read(this.folder.resolve("database.passwords")).superuser());
	}

	private static int freePort() throws IOException {
		try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
			return socket.getLocalPort();
		}
	}

}
