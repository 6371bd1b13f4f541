package county.bigtree.registry.archive;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;

import county.bigtree.db.DatabaseMigrations;
import county.bigtree.db.DatabaseUnavailable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * What an archive holds and does not hold, and what becomes of one that is interrupted,
 * cut off, damaged, changed or of another release.
 */
class ArchiveFileIT {

	/** Any answer that differs where a row of a table does. */
	private static final String CONTENT = "select coalesce(string_agg(t::text, '|' order by t::text collate \"C\"), '') from %s t";

	private final Path folder;

	private final Path file;

	private final SmallRegister register;

	private final SmallRegister target = SmallRegister.unused();

	private final SmallRegister nothing = SmallRegister.nothing();

	ArchiveFileIT(@TempDir Path folder) throws SQLException {
		this.folder = folder;
		this.file = folder.resolve("register.tar.gz");
		this.register = SmallRegister.make();
	}

	@BeforeEach
	void addSomePhotos() throws SQLException {
		this.register.addPhotos(3, 2, 5000);
	}

	@AfterEach
	void drop() {
		this.register.close();
		this.target.close();
		this.nothing.close();
	}

	@Test
	void everyRowComesBackAsItWas() throws SQLException {
		ArchiveManifest written = this.register.archive(this.file);
		assertThat(this.target.restore(this.file)).isEqualTo(written);
		for (String table : archived()) {
			String columns = table.equals("person")
					? "(select id, email, credit_name, legal_name, active, created_at, " + "erased_at from person)"
					: RegisterTable.quoted(table);
			String query = CONTENT.formatted(columns);
			assertThat(this.target.list(query)).as(table).isEqualTo(this.register.list(query));
		}
		assertThat(this.target.list("select body from text_body order by id")).isEqualTo(SmallRegister.ODD_TEXTS);
		assertThat(written.pictures()).isEqualTo(6);
	}

	@Test
	void anArchiveOfTheRestoredRegisterHoldsTheSameBytes() {
		ArchiveManifest first = this.register.archive(this.file);
		this.target.restore(this.file);
		ArchiveManifest second = this.target.archive(this.folder.resolve("second.tar.gz"));
		assertThat(second.groups()).filteredOn((group) -> !group.path().equals(ArchiveFormat.HEAD))
			.isEqualTo(first.groups().stream().filter((group) -> !group.path().equals(ArchiveFormat.HEAD)).toList());
	}

	@Test
	void everyTableIsArchivedOrLeftOutByName() throws SQLException {
		Set<String> all = new TreeSet<>(
				this.register.list("select relname from pg_class where relkind in ('r', 'p') and not relispartition"
						+ " and relnamespace = 'public'::regnamespace"));
		Set<String> told = new TreeSet<>(archived());
		told.addAll(RegisterTables.LEFT_OUT.keySet());
		assertThat(told).isEqualTo(all);
		assertThat(archived()).doesNotContainAnyElementsOf(RegisterTables.LEFT_OUT.keySet());
	}

	/**
	 * Whoever adds a column that looks like a secret has to say here that it is none.
	 */
	@Test
	void noColumnThatIsArchivedLooksLikeASecret() throws SQLException {
		List<String> tables = archived();
		assertThat(this.register.list("select table_name || '.' || column_name from information_schema.columns "
				+ "where table_schema = 'public' and column_name ~ 'hash|password|secret|token|key$|session' "
				+ "order by 1"))
			.filteredOn((column) -> tables.contains(column.replaceFirst("\\..*", "")))
			.containsExactlyInAnyOrder("change.hash", "county.key", "import_row.row_key", "import_waiting.row_key",
					"person.password_hash", "seal.hash", "species.key");
	}

	@Test
	void noPasswordOrTokenIsInIt() throws IOException, SQLException {
		this.register.archive(this.file);
		Path plain = this.folder.resolve("again.tar.gz");
		StringBuilder all = new StringBuilder();
		Repack.copy(this.file, plain, (name, content) -> {
			all.append(name).append('\n').append(new String(content, StandardCharsets.UTF_8));
			return content;
		});
		assertThat(all).contains("one@example.org")
			.doesNotContain("canary-of-a-hash")
			.doesNotContain("canary-of-a-token");
		this.target.restore(this.file);
		assertThat(this.target.list("select distinct password_hash from person"))
			.containsExactly("hash of what nobody knows");
		assertThat(this.target.list("select id::text from access_token")).isEmpty();
	}

	@Test
	void numbersThatTheDatabaseGivesGoOnAfterTheLast() throws SQLException {
		this.register.archive(this.file);
		this.target.restore(this.file);
		String next = "select nextval(pg_get_serial_sequence('score', 'id'))::text";
		assertThat(this.target.list(next)).containsExactly("6").isEqualTo(this.register.list(next));
	}

	@Test
	void holdsOneInstantWhileOthersGoOn() throws SQLException {
		boolean[] written = new boolean[1];
		this.register.archive(this.file, (what, done, of) -> {
			if (!written[0]) {
				written[0] = true;
				write("insert into person (id, email, credit_name, password_hash, created_at) values "
						+ "(gen_random_uuid(), 'late@example.org', 'L. Ate', '', now());"
						+ "insert into tree (id, county, seq, recorded_at, tag) values (gen_random_uuid(), 'oddly', 2, now(), 'ODD-2')");
			}
		});
		this.target.restore(this.file);
		assertThat(this.register.list("select tag from tree")).hasSize(2);
		assertThat(this.target.list("select tag from tree")).containsExactly("ODD-1");
		assertThat(this.target.list("select email from person order by 1")).containsExactly("one@example.org",
				"two@example.org");
	}

	@Test
	void onlyItsOwnerMayReadItAndNothingIsOverwritten() throws IOException {
		this.register.archive(this.file);
		assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(this.file))).isEqualTo("rw-------");
		assertThatThrownBy(() -> this.register.archive(this.file)).isInstanceOf(UnusableArchive.class)
			.hasMessageContaining("already");
	}

	@Test
	void leavesNoFileWhereTheWritingIsInterrupted() throws IOException {
		assertThatThrownBy(() -> this.register.archive(this.file, (what, done, of) -> {
			throw new IllegalStateException("interrupted");
		})).hasMessage("interrupted");
		assertThat(names()).isEmpty();
	}

	@Test
	void writesAnewWhatADeadProcessLeft() throws IOException {
		Path part = this.folder.resolve("register.tar.gz.part");
		Files.write(part, new byte[10_000_000]);
		this.register.archive(this.file);
		assertThat(names()).containsExactly("register.tar.gz");
		this.target.restore(this.file);
	}

	@Test
	void saysThatThereIsNoRegister() {
		assertThatThrownBy(() -> this.nothing.archive(this.file)).isInstanceOf(UnusableArchive.class)
			.hasMessageContaining("no register");
		assertThatThrownBy(() -> this.target.restore(this.file)).isInstanceOf(UnusableArchive.class)
			.hasMessageContaining("There is no file");
	}

	@Test
	void refusesWhatIsCutOff() throws IOException, SQLException {
		this.register.archive(this.file);
		byte[] whole = Files.readAllBytes(this.file);
		Path cut = this.folder.resolve("cut.tar.gz");
		List<Integer> lengths = new Random(7).ints(60, 0, whole.length).boxed().toList();
		for (int length : concat(lengths, List.of(0, 1, 20, whole.length - 1, whole.length - 8, whole.length - 9))) {
			Files.write(cut, Arrays.copyOf(whole, length));
			assertThatThrownBy(() -> check(cut)).as("first %d bytes", length).isInstanceOf(UnusableArchive.class);
		}
		assertThatThrownBy(() -> this.nothing.restore(cut)).hasMessageContaining("ends too early");
		assertThat(this.nothing.list(tables())).isEmpty();
	}

	/**
	 * All but the first ten bytes, which only say that it is packed by gzip, when and on
	 * what (RFC 1952, 2.3).
	 */
	@Test
	void findsAFlippedByte() throws IOException, SQLException {
		this.register.archive(this.file);
		byte[] bytes = Files.readAllBytes(this.file);
		Path flipped = this.folder.resolve("flipped.tar.gz");
		List<Integer> places = new Random(7).ints(200, 10, bytes.length).boxed().toList();
		for (int place : concat(places, List.of(10, bytes.length - 1, bytes.length - 5))) {
			bytes[place] ^= 0x10;
			Files.write(flipped, bytes);
			// The same can be said in two ways (RFC 1951): a match as far back again,
			// where
			// a text repeats itself.
			if (!Arrays.equals(unpacked(flipped), unpacked(this.file))) {
				assertThatThrownBy(() -> check(flipped)).as("byte %d", place).isInstanceOf(UnusableArchive.class);
			}
			bytes[place] ^= 0x10;
		}
	}

	/** As far as it can be unpacked. */
	private static byte[] unpacked(Path file) {
		ByteArrayOutputStream read = new ByteArrayOutputStream();
		try (InputStream content = new GZIPInputStream(Files.newInputStream(file))) {
			content.transferTo(read);
		}
		catch (IOException ex) {
			return new byte[0];
		}
		return read.toByteArray();
	}

	@ParameterizedTest
	@ValueSource(strings = { "tables/person/000001.csv", "photos/10000000-0000-7000-8000-000000000002/100.jpg",
			"README.txt", "tables/species/000001.csv" })
	void findsWhatWasChangedAndPackedAnew(String member) throws IOException, SQLException {
		this.register.archive(this.file);
		Path changed = this.folder.resolve("changed.tar.gz");
		Repack.copy(this.file, changed, (name, content) -> {
			if (name.equals(member)) {
				content[content.length - 2] ^= 1;
			}
			return content;
		});
		assertThatThrownBy(() -> this.nothing.restore(changed)).isInstanceOf(UnusableArchive.class)
			.hasMessageContaining("other bytes");
		Repack.copy(this.file, this.folder.resolve("lacking.tar.gz"),
				(name, content) -> name.equals(member) ? null : content);
		assertThatThrownBy(() -> this.nothing.restore(this.folder.resolve("lacking.tar.gz")))
			.isInstanceOf(UnusableArchive.class);
		assertThat(this.nothing.list(tables())).isEmpty();
	}

	@Test
	void refusesAnArchiveWithoutItsEnd() throws IOException {
		this.register.archive(this.file);
		Path changed = this.folder.resolve("changed.tar.gz");
		Repack.copy(this.file, changed, (name, content) -> name.equals("manifest.json") ? null : content);
		assertThatThrownBy(() -> this.target.restore(changed)).hasMessageContaining("no manifest");
	}

	@Test
	void refusesWhatANewerReleaseWrote() throws IOException {
		this.register.archive(this.file);
		Path newer = this.folder.resolve("newer.tar.gz");
		changeHead(newer, "\"formatVersion\" : 1", "\"formatVersion\" : 2");
		assertThatThrownBy(() -> this.target.restore(newer)).isInstanceOf(UnusableArchive.class)
			.hasMessageContaining("newer release")
			.hasMessageContaining("format 2");
		Files.delete(newer);
		String schema = "\"schemaVersion\" : \"" + newest() + "\"";
		changeHead(newer, schema, "\"schemaVersion\" : \"209901010000\"");
		assertThatThrownBy(() -> this.target.restore(newer)).isInstanceOf(UnusableArchive.class)
			.hasMessageContaining("newer release")
			.hasMessageContaining("209901010000");
	}

	@Test
	void refusesWhatIsNoArchive() throws IOException {
		Files.writeString(this.file, "a list of trees");
		assertThatThrownBy(() -> this.target.restore(this.file)).isInstanceOf(UnusableArchive.class)
			.hasMessageContaining("no archive");
	}

	@Test
	void refusesARegisterThatIsNotEmpty() throws SQLException {
		this.register.archive(this.file);
		try (SmallRegister other = SmallRegister.make()) {
			assertThatThrownBy(() -> other.restore(this.file)).isInstanceOf(UnusableArchive.class)
				.hasMessageContaining("not empty");
		}
		this.target.restore(this.file);
		assertThatThrownBy(() -> this.target.restore(this.file)).hasMessageContaining("not empty");
	}

	@Test
	void restoresIntoADatabaseWithoutAnyTable() throws SQLException {
		this.register.archive(this.file);
		this.nothing.restore(this.file);
		assertThat(this.nothing.list("select tag from tree")).containsExactly("ODD-1");
	}

	@Test
	void anInterruptedRestoreLeavesAnEmptyRegisterThatCanBeRestoredInto() throws SQLException {
		this.register.archive(this.file);
		assertThatThrownBy(() -> this.target.restore(this.file, (what, done, of) -> {
			if (what.equals("rows") && done > of / 2) {
				throw new IllegalStateException("interrupted");
			}
		})).hasMessage("interrupted");
		assertThat(this.target.list("select email from person")).isEmpty();
		this.target.restore(this.file);
		assertThat(this.target.list("select tag from tree")).containsExactly("ODD-1");
	}

	@Test
	void aConnectionLostInTheMiddleLeavesAnEmptyRegister() throws SQLException {
		this.register.archive(this.file);
		assertThatThrownBy(() -> this.target.restore(this.file, (what, done, of) -> {
			if (what.equals("pictures")) {
				end("select pg_terminate_backend(pid)::text from pg_stat_activity where datname = current_database() "
						+ "and state = 'idle in transaction'");
			}
		})).isInstanceOf(UnusableArchive.class).hasMessageContaining("empty as before");
		assertThat(this.target.list("select id::text from photo union select id::text from person")).isEmpty();
		this.target.restore(this.file);
		assertThat(this.target.list("select count(*)::text from photo_body")).containsExactly("6");
	}

	/**
	 * Each is a schema that a register could be at if it had been run from the sources of
	 * those days.
	 */
	@ParameterizedTest
	@ValueSource(strings = { "202611252235", "202611260120", "202611260350" })
	void restoresTheArchiveOfAnEarlierSchemaAndBringsItUpToDate(String schema) throws SQLException {
		try (SmallRegister earlier = SmallRegister.make(schema)) {
			earlier.archive(this.file);
			this.nothing.restore(this.file);
			for (String table : List.of("tree", "text_body", "role_assignment", "county", "species", "species_name")) {
				String columns = String.join(", ",
						earlier
							.list("select quote_ident(column_name) from information_schema.columns where table_name = '"
									+ table + "' and table_schema = 'public' order by ordinal_position"));
				String query = CONTENT.formatted("(select " + columns + " from " + table + ")");
				assertThat(this.nothing.list(query)).as(table).isEqualTo(earlier.list(query));
			}
		}
		assertThat(this.nothing.list("select max(version) from flyway_schema_history where success"))
			.containsExactly(newest());
		assertThat(this.nothing.list("select girth_by from score")).containsOnlyNulls();
		assertThat(this.nothing.migrations().info().pending()).isEmpty();
	}

	@Test
	void refusesAnEarlierArchiveWhereThisReleaseHasBeenStarted() throws SQLException {
		try (SmallRegister earlier = SmallRegister.make("202611260120")) {
			earlier.archive(this.file);
		}
		assertThatThrownBy(() -> this.target.restore(this.file)).isInstanceOf(UnusableArchive.class)
			.hasMessageContaining("no release has been started on");
	}

	/**
	 * The catalogue is as it was archived, until the files that it is made of change.
	 */
	@Test
	void keepsTheCatalogueAsItWas() throws SQLException {
		this.register.execute("update species set common_name = 'county''s own oak' where key = 'quercus-alba'");
		this.register.archive(this.file);
		this.target.restore(this.file);
		String oak = "select common_name from species where key = 'quercus-alba'";
		assertThat(this.target.list(oak)).containsExactly("county's own oak");
		this.register.execute("update flyway_schema_history set checksum = 1 where version is null");
		Path older = this.folder.resolve("older.tar.gz");
		this.register.archive(older);
		try (SmallRegister again = SmallRegister.unused()) {
			again.restore(older);
			assertThat(again.list(oak)).containsExactly("white oak");
		}
	}

	@Test
	void refusesToArchiveWhatANewerReleaseWrote() throws SQLException {
		this.register.execute("""
				insert into flyway_schema_history (installed_rank, version, description, type, script, installed_by,
				execution_time, success) values (9999, '999901010000', 'to come', 'SQL', 'V999901010000__to_come.sql',
				'owner', 1, true)""");
		assertThatThrownBy(() -> this.register.archive(this.file)).isInstanceOf(DatabaseUnavailable.class)
			.hasMessageContaining("newer release");
	}

	private static void check(Path file) throws SQLException {
		new ArchiveReader(file, SmallRegister.SILENT).read("", (name, content) -> {
		});
	}

	private void changeHead(Path to, String from, String into) throws IOException {
		Repack.copy(this.file, to, (name, content) -> {
			String text = new String(content, StandardCharsets.UTF_8);
			assertThat(name.equals("archive.json")).isEqualTo(text.contains(from));
			return name.equals("archive.json") ? text.replace(from, into).getBytes(StandardCharsets.UTF_8) : content;
		});
	}

	private String newest() {
		return DatabaseMigrations.newestVersion(this.register.migrations());
	}

	private List<String> archived() throws SQLException {
		try (Connection connection = this.register.database().owner().dataSource().getConnection()) {
			return RegisterTables.read(connection).stream().map(RegisterTable::name).toList();
		}
	}

	private List<String> names() throws IOException {
		try (Stream<Path> files = Files.list(this.folder)) {
			return files.map((one) -> one.getFileName().toString().toLowerCase(Locale.ROOT)).sorted().toList();
		}
	}

	private static String tables() {
		return "select relname from pg_class where relkind = 'r' and relnamespace = 'public'::regnamespace";
	}

	private void write(String sql) {
		try {
			this.register.execute(sql);
		}
		catch (SQLException ex) {
			throw new IllegalStateException(ex);
		}
	}

	private void end(String sql) {
		try {
			this.target.list(sql);
		}
		catch (SQLException ex) {
			throw new IllegalStateException(ex);
		}
	}

	private static List<Integer> concat(List<Integer> some, List<Integer> more) {
		return Stream.concat(some.stream(), more.stream()).toList();
	}

}
