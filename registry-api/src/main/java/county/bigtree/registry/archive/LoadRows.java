package county.bigtree.registry.archive;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

import county.bigtree.registry.archive.ArchiveFormat.PhotoName;
import org.postgresql.PGConnection;

/**
 * Puts what an archive holds into an empty register of the same schema, within a
 * transaction that the caller ends.
 */
final class LoadRows implements ArchiveReader.Members {

	private static final int LONGEST_HEADER = 1 << 14;

	private static final Set<String> TOLD = Set.of(ArchiveFormat.HEAD, ArchiveFormat.GUIDE, ArchiveFormat.SCHEMA);

	private static final String INSERT_PICTURE = "insert into photo_body (photo, width, height, salt, body) "
			+ "select photo, width, height, salt, ? from picture_row where photo = ? and width = ?";

	private final Connection connection;

	private final ArchiveReader.Read checked;

	private final ArchiveProgress progress;

	private final Map<String, RegisterTable> tables = new HashMap<>();

	private final Map<String, Long> rows = new HashMap<>();

	private long taken;

	private long pictures;

	private LoadRows(Connection connection, ArchiveReader.Read checked, ArchiveProgress progress) {
		this.connection = connection;
		this.checked = checked;
		this.progress = progress;
	}

	/**
	 * Keeps all others out, sees that the register is empty, and makes room.
	 */
	static LoadRows begin(Connection connection, ArchiveReader.Read checked, ArchiveProgress progress)
			throws SQLException {
		LoadRows loading = new LoadRows(connection, checked, progress);
		try (Statement statement = connection.createStatement()) {
			for (String setting : Snapshot.WRITING) {
				statement.execute(setting);
			}
			statement.execute("set local lock_timeout = '10s'");
			statement.execute("lock table "
					+ String.join(", ", EmptyRegister.tables(statement).stream().map(RegisterTable::quoted).toList())
					+ " in access exclusive mode");
			EmptyRegister.require(connection);
			for (String table : RegisterTables.REFERENCE) {
				statement.execute("delete from " + table);
			}
			statement.execute(
					"create temp table picture_row (photo uuid, width int, height int, salt bytea) on commit drop");
		}
		RegisterTables.read(connection).forEach((table) -> loading.tables.put(table.name(), table));
		return loading;
	}

	@Override
	public void take(String name, InputStream content) throws IOException, SQLException {
		String table = ArchiveFormat.table(name);
		PhotoName photo = ArchiveFormat.photo(name);
		if (table != null) {
			copy(table, content);
		}
		else if (photo != null) {
			insert(photo, content.readAllBytes());
		}
		else if (!TOLD.contains(ArchiveFormat.group(name))) {
			throw new UnusableArchive("The archive holds " + name + ", which this release does not know.");
		}
	}

	private void copy(String name, InputStream content) throws IOException, SQLException {
		RegisterTable table = this.tables.get(name);
		List<String> columns = header(content);
		if (table == null || !Set.copyOf(columns).equals(Set.copyOf(table.columnNames()))
				|| columns.size() != table.columns().size()) {
			throw new UnusableArchive("The archive holds " + name + " with the columns " + String.join(", ", columns)
					+ ", which is not as the schema " + this.checked.head().schemaVersion() + " has it.");
		}
		String target = name.equals(RegisterTables.PICTURES) ? "picture_row" : name;
		long copied = this.connection.unwrap(PGConnection.class)
			.getCopyAPI()
			.copyIn(RegisterTable.copyIn(target, columns), content);
		this.rows.merge(name, copied, Long::sum);
		this.taken += copied;
		this.progress.at("rows", this.taken, this.checked.manifest().rows());
	}

	/** The first line: names that need no quotes. */
	private static List<String> header(InputStream content) throws IOException {
		ByteArrayOutputStream line = new ByteArrayOutputStream();
		for (int one = content.read(); one >= 0 && one != '\n' && line.size() < LONGEST_HEADER; one = content.read()) {
			line.write(one);
		}
		return List.of(line.toString(StandardCharsets.UTF_8).strip().split(",", -1));
	}

	private void insert(PhotoName photo, byte[] picture) throws SQLException {
		try (PreparedStatement insert = this.connection.prepareStatement(INSERT_PICTURE)) {
			insert.setBytes(1, picture);
			insert.setObject(2, photo.photo());
			insert.setInt(3, photo.width());
			if (insert.executeUpdate() != 1) {
				throw new UnusableArchive("The archive holds a picture of the photo " + photo.photo()
						+ " that none of its tables tells of.");
			}
		}
		this.progress.at("pictures", ++this.pictures, this.checked.manifest().pictures());
	}

	/**
	 * Brings in order what depends on all of it.
	 * @param nobodysPassword the hash that stands for those that were left out
	 */
	void finish(String nobodysPassword) throws SQLException {
		requireAll();
		try (PreparedStatement update = this.connection
			.prepareStatement("update person set password_hash = ? where password_hash = ''")) {
			update.setString(1, nobodysPassword);
			update.executeUpdate();
		}
		setCounters();
		rememberRepeatables();
	}

	private void requireAll() throws SQLException {
		for (ArchiveManifest.Group group : this.checked.manifest().groups()) {
			String table = group.path().replace("tables/", "");
			if (group.rows() != null && !group.rows().equals(this.rows.get(table))) {
				throw new UnusableArchive("The archive tells of " + group.rows() + " rows of " + table + " and holds "
						+ this.rows.get(table) + ".");
			}
		}
		if (this.pictures != this.rows.getOrDefault(RegisterTables.PICTURES, 0L)) {
			throw new UnusableArchive("The archive tells of " + this.rows.get(RegisterTables.PICTURES)
					+ " pictures and holds " + this.pictures + ".");
		}
	}

	/** Numbers that the database gives go on after the last one given. */
	private void setCounters() throws SQLException {
		List<String> statements = new ArrayList<>();
		try (Statement statement = this.connection.createStatement();
				ResultSet counters = statement.executeQuery(
						"""
								select format('select setval(pg_get_serial_sequence(%L, %L), max(%I)) from %I having max(%I) is not null',
								  quote_ident(c.relname), a.attname, a.attname, c.relname, a.attname)
								from pg_class c join pg_attribute a on a.attrelid = c.oid
								where c.relnamespace = current_schema()::regnamespace and c.relkind = 'r' and a.attidentity <> ''
								  and not a.attisdropped""")) {
			while (counters.next()) {
				statements.add(counters.getString(1));
			}
		}
		try (Statement statement = this.connection.createStatement()) {
			for (String one : statements) {
				statement.execute(one);
			}
		}
	}

	/**
	 * What repeated migrations made is as the archive has it: where this release would
	 * make it otherwise, they run again.
	 */
	private void rememberRepeatables() throws SQLException {
		try (PreparedStatement update = this.connection.prepareStatement(
				"update flyway_schema_history set checksum = ? where version is null and description = ?")) {
			for (Map.Entry<String, Integer> one : this.checked.head().repeatables().entrySet()) {
				update.setInt(1, one.getValue());
				update.setString(2, one.getKey());
				update.executeUpdate();
			}
		}
	}

}
