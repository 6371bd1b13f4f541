package county.bigtree.registry.archive;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * A register in which nothing has been recorded and nobody has an account: it holds what
 * its migrations put there, and no more.
 */
final class EmptyRegister {

	private static final String TABLES = """
			select relname from pg_class c
			where relnamespace = current_schema()::regnamespace and relkind in ('r', 'p') and not relispartition
			  and not exists (select from pg_depend d
			    where d.classid = 'pg_class'::regclass and d.objid = c.oid and d.deptype = 'e')
			order by relname""";

	/** By migrations, and by the service itself day by day. */
	private static final Set<String> BY_ITSELF = Set.of("flyway_schema_history", "changeable_table", "species",
			"species_name", "upkeep_run", "upkeep_trouble");

	private EmptyRegister() {
	}

	/**
	 * Requires it.
	 * @throws UnusableArchive if something is there
	 */
	static void require(Connection connection) throws SQLException {
		try (Statement statement = connection.createStatement()) {
			for (String table : tables(statement)) {
				try (ResultSet row = statement
					.executeQuery("select exists (select from " + RegisterTable.quoted(table) + ")")) {
					row.next();
					if (row.getBoolean(1)) {
						throw new UnusableArchive("This register is not empty (there are rows in " + table
								+ "): restore into an empty one, nothing is put over what is there.");
					}
				}
			}
		}
	}

	/** All that would have to be empty. */
	static List<String> tables(Statement statement) throws SQLException {
		List<String> tables = new ArrayList<>();
		try (ResultSet rows = statement.executeQuery(TABLES)) {
			while (rows.next()) {
				if (!BY_ITSELF.contains(rows.getString(1))) {
					tables.add(rows.getString(1));
				}
			}
		}
		return tables;
	}

}
