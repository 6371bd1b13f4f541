package county.bigtree.registry.archive;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.db.DatabaseMigrations;
import county.bigtree.db.TestDatabase;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.security.crypto.password.PasswordEncoder;

/**
 * A database with a few rows of most kinds of columns, put there by hand.
 */
record SmallRegister(TestDatabase database) implements AutoCloseable {

	static final ArchiveProgress SILENT = (what, done, of) -> {
	};

	/** Texts that a careless reader of CSV would take for something else. */
	static final List<String> ODD_TEXTS = List.of("", "\"quoted\", and a comma", "two\nlines", "\\.", "a\r\n\\.\nb",
			"\\N", "NULL", " blanks ", "\t", "\\x41", "Ålesund 木 \uD83C\uDF33", "'; drop table person; --",
			"{\"a\": 1}");

	private static final String ROWS = """
			insert into person (id, email, credit_name, password_hash, created_at) values
			  ('00000000-0000-7000-8000-000000000001', 'one@example.org', 'A. Person', 'canary-of-a-hash', '2020-02-29 12:00:00.000001Z'),
			  ('00000000-0000-7000-8000-000000000002', 'two@example.org', 'B. "Bee", Person', 'canary-of-a-hash', '2020-03-01Z');
			insert into role_assignment (id, person, role, from_at) values
			  ('00000000-0000-7000-8000-000000000011', '00000000-0000-7000-8000-000000000001', 'administrator', '2020-02-29Z');
			insert into access_token (id, person, name, hash, last4, created_at, expires_on) values
			  ('00000000-0000-7000-8000-000000000021', '00000000-0000-7000-8000-000000000001', 'canary-of-a-token', sha256('x'), 'abcd',
			   '2020-02-29Z', '2099-01-01');
			insert into county (key, seq, recorded_at, name, state, time_zone, tag_prefix, boundary, practice) values
			  ('oddly', 1, '2020-03-02 08:30:00.123456+02', 'Oddly', 'Nowhere', 'America/Boise', 'ODD', '{"b": [1.50, null, "\\u00e5"], "a": {}}', false);
			insert into county_head (county, seq, chain, last_tag) values ('oddly', 1, '\\x00ff10', 7);
			insert into text_piece (id, county, seq, recorded_at, digest)
			  values ('00000000-0000-7000-8000-0000000000ff', 'oddly', 1, '2020-03-02Z', '\\x');
			insert into tree (id, county, seq, recorded_at, tag)
			  values ('00000000-0000-7000-8000-000000000101', 'oddly', 1, '2020-03-02Z', 'ODD-1');
			insert into measurement (id, tree, county, seq, recorded_at, measured_on, filed_by, basis, measurers, readings, confirmed_checks)
			  values ('00000000-0000-7000-8000-000000000201', '00000000-0000-7000-8000-000000000101', 'oddly', 1, '2020-03-02Z', '0044-03-15',
			  '00000000-0000-7000-8000-000000000001', 'filed', '00000000-0000-7000-8000-0000000000ff', '{"girth": 12.50}', '[]');
			insert into score (county, species, tree, measurement, points, points_u, measured_on, seen_on, carried_over, effective_on, may_hold,
			    recorded_at, closed_at, ends_on, ended)
			  select 'oddly', 'quercus-alba', '00000000-0000-7000-8000-000000000101', '00000000-0000-7000-8000-000000000201', 300.10 + n, 1.2345,
			    '2020-03-02', '2020-03-02', false, date '2020-03-02' + n, true, '2020-03-02Z', 'infinity', date '2020-03-03' + n, 'measured'
			  from generate_series(0, 4) n
			""";

	/** At the newest schema. */
	static SmallRegister make() throws SQLException {
		return new SmallRegister(TestDatabase.migrated()).filled();
	}

	/** At the schema of an earlier day. */
	static SmallRegister make(String schema) throws SQLException {
		SmallRegister register = new SmallRegister(TestDatabase.empty());
		DatabaseMigrations.bringTo(register.migrations(), schema);
		return register.filled();
	}

	/** Started once and never used. */
	static SmallRegister unused() {
		return new SmallRegister(TestDatabase.migrated());
	}

	/** A database without any table. */
	static SmallRegister nothing() {
		return new SmallRegister(TestDatabase.empty());
	}

	private SmallRegister filled() throws SQLException {
		execute(ROWS);
		int number = 0;
		for (String text : ODD_TEXTS) {
			String id = "'00000000-0000-7000-8000-%012d'".formatted(++number);
			execute("insert into text_piece (id, county, seq, recorded_at, digest) values (" + id
					+ ", 'oddly', 1, '2020-03-02Z', sha256('x'))");
			execute("insert into text_body (id, salt, body) values (" + id + ", '\\x0001', convert_from('\\x"
					+ HexFormat.of().formatHex(text.getBytes(StandardCharsets.UTF_8)) + "', 'UTF8'))");
		}
		return this;
	}

	/** Photos of so many bytes in each of so many widths. */
	void addPhotos(int photos, int widths, int bytes) throws SQLException {
		execute("""
				insert into photo (id, county, seq, recorded_at, tree, shows, by_person, width, height, received_bytes, digest)
				select ('10000000-0000-7000-8000-' || lpad(n::text, 12, '0'))::uuid, 'oddly', 1, '2020-03-02Z',
				  '00000000-0000-7000-8000-000000000101', 'bark', '00000000-0000-7000-8000-000000000001', 9, 9, 9, sha256('x')
				from generate_series(1, %1$d) n;
				insert into photo_body (photo, width, height, salt, body)
				select ('10000000-0000-7000-8000-' || lpad(n::text, 12, '0'))::uuid, 100 * w, 9, sha256(int4send(n)),
				  substring(decode(repeat(encode(sha256(int4send(n * 100 + w)), 'hex'), %3$d / 32 + 1), 'hex') for %3$d)
				from generate_series(1, %1$d) n, generate_series(1, %2$d) w"""
			.formatted(photos, widths, bytes));
	}

	ArchiveManifest archive(Path file) {
		return archive(file, SILENT);
	}

	/** With the rights of the service, where there is such a role. */
	ArchiveManifest archive(Path file, ArchiveProgress progress) {
		return TestArchives.of(this.database.owner().dataSource()).archive(file, progress);
	}

	ArchiveManifest restore(Path file) {
		return restore(file, SILENT);
	}

	ArchiveManifest restore(Path file, ArchiveProgress progress) {
		return restoring(migrations()).restore(file, progress);
	}

	static RestoreRegister restoring(Flyway migrations) {
		return new RestoreRegister(new ObjectProvider<>() {
			@Override
			public Flyway getObject() {
				return migrations;
			}
		}, new PasswordEncoder() {
			@Override
			public String encode(@Nullable CharSequence rawPassword) {
				return "hash of what nobody knows";
			}

			@Override
			public boolean matches(@Nullable CharSequence rawPassword, @Nullable String encodedPassword) {
				return false;
			}
		}, TestArchives.noStore());
	}

	Flyway migrations() {
		DatabaseLogin owner = this.database.owner();
		return DatabaseMigrations
			.configure(Flyway.configure().dataSource(owner.jdbcUrl(), owner.user(), owner.password()),
					this.database.service().user())
			.load();
	}

	void execute(String sql) throws SQLException {
		try (Connection connection = this.database.owner().dataSource().getConnection();
				Statement statement = connection.createStatement()) {
			statement.execute(sql);
		}
	}

	/** The first column of each row. */
	List<String> list(String query) throws SQLException {
		List<String> values = new ArrayList<>();
		try (Connection connection = this.database.owner().dataSource().getConnection();
				Statement statement = connection.createStatement();
				ResultSet rows = statement.executeQuery(query)) {
			while (rows.next()) {
				values.add(rows.getString(1));
			}
		}
		return values;
	}

	@Override
	public void close() {
		this.database.close();
	}

}
