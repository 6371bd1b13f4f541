package county.bigtree.registry.archive;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

import county.bigtree.registry.archive.RegisterTable.Column;

/**
 * Which tables of a database an archive holds, read from the database itself, so that a
 * register of an earlier schema is archived as it stands. Whatever is not left out here
 * by name is archived.
 */
final class RegisterTables {

	/** What a register does without, and why. */
	static final Map<String, String> LEFT_OUT = Map.ofEntries(
			Map.entry("flyway_schema_history", "is made by the migrations"),
			Map.entry("changeable_table", "is made by the migrations"), Map.entry("access_token", "lets somebody in"),
			Map.entry("invitation", "lets somebody in"),
			Map.entry("invitation_role", "belongs to what lets somebody in"),
			Map.entry("password_reset", "lets somebody in"), Map.entry("spring_session", "lets somebody in"),
			Map.entry("spring_session_attributes", "lets somebody in"),
			Map.entry("sign_in_event", "tells who came from where, and holds people back: kept for half a year only"),
			Map.entry("notice_secret", "signs links that are followed without signing in"),
			Map.entry("keyed_answer", "answers requests sent twice, for a day or so"),
			Map.entry("upkeep_run", "tells what was done to keep the archived register, not the restored one"),
			Map.entry("upkeep_trouble", "tells what was wrong where the archived register was kept"),
			Map.entry("letter_allowance", "holds letter writers back for an hour"),
			Map.entry("unnamed_object", "names what is to be deleted from the object store of the archived register"),
			Map.entry("import_file", "waits some days at most to be taken in"));

	/** Filled by a migration, and put in place of what that one filled. */
	static final List<String> REFERENCE = List.of("species_name", "species");

	static final String PICTURES = "photo_body";

	/** The picture, or where it is in the object store. */
	private static final Set<String> PICTURE_ITSELF = Set.of("body", "object", "digest");

	private static final String COLUMNS = """
			select c.relname, a.attname, format_type(a.atttypid, a.atttypmod) as type,
			  coalesce(array_position(i.indkey::smallint[], a.attnum), -1) as position
			from pg_class c
			join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = ''
			left join pg_index i on i.indrelid = c.oid and i.indisprimary
			where c.relnamespace = current_schema()::regnamespace and c.relkind in ('r', 'p') and not c.relispartition
			  and not exists (select from pg_depend d
			    where d.classid = 'pg_class'::regclass and d.objid = c.oid and d.deptype = 'e')
			order by c.relname collate "C", a.attnum""";

	private static final String REFERENCES = """
			select distinct f.relname as from_table, t.relname as to_table
			from pg_constraint r join pg_class f on f.oid = r.conrelid join pg_class t on t.oid = r.confrelid
			where r.contype = 'f' and not r.condeferrable and f.oid <> t.oid
			  and r.connamespace = current_schema()::regnamespace""";

	private RegisterTables() {
	}

	/** In an order in which each row finds those that it names. */
	static List<RegisterTable> read(Connection connection) throws SQLException {
		Map<String, RegisterTable> tables = all(connection);
		Map<String, Set<String>> named = references(connection);
		List<RegisterTable> ordered = new ArrayList<>();
		Set<String> waiting = new TreeSet<>(tables.keySet());
		while (!waiting.isEmpty()) {
			String next = waiting.stream()
				.filter((table) -> named.getOrDefault(table, Set.of()).stream().noneMatch(waiting::contains))
				.findFirst()
				.orElseThrow(() -> new IllegalStateException("Tables name each other in a circle: " + waiting));
			waiting.remove(next);
			ordered.add(tables.get(next));
		}
		return ordered;
	}

	private static Map<String, RegisterTable> all(Connection connection) throws SQLException {
		Map<String, List<Column>> columns = new TreeMap<>();
		Map<String, TreeMap<Integer, Column>> keys = new HashMap<>();
		try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(COLUMNS)) {
			while (rows.next()) {
				Column column = new Column(rows.getString("relname"), rows.getString("attname"),
						rows.getString("type"));
				if (LEFT_OUT.containsKey(column.table())) {
					continue;
				}
				if (rows.getInt("position") >= 0) {
					keys.computeIfAbsent(column.table(), (table) -> new TreeMap<>())
						.put(rows.getInt("position"), column);
				}
				if (!isPicture(column)) {
					columns.computeIfAbsent(column.table(), (table) -> new ArrayList<>()).add(column);
				}
			}
		}
		Map<String, RegisterTable> tables = new TreeMap<>();
		columns.forEach((table, found) -> tables.put(table,
				new RegisterTable(table, found, List.copyOf(keys.getOrDefault(table, new TreeMap<>()).values()))));
		return tables;
	}

	/** Pictures stand in the archive as files of their own. */
	private static boolean isPicture(Column column) {
		return column.table().equals(PICTURES) && PICTURE_ITSELF.contains(column.name());
	}

	private static Map<String, Set<String>> references(Connection connection) throws SQLException {
		Map<String, Set<String>> references = new HashMap<>();
		try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(REFERENCES)) {
			while (rows.next()) {
				references.computeIfAbsent(rows.getString("from_table"), (table) -> new TreeSet<>())
					.add(rows.getString("to_table"));
			}
		}
		return references;
	}

}
