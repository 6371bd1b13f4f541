package county.bigtree.registry.archive;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import county.bigtree.registry.journal.SqlTime;

/**
 * The database as it stood at one instant, whatever is changed meanwhile: a transaction
 * that only reads and that its connection is in.
 */
record Snapshot(Connection connection, Instant takenAt) {

	/** How values are written must not depend on the server's settings. */
	static final List<String> WRITING = List.of("set local time zone 'UTC'", "set local datestyle = 'ISO, YMD'",
			"set local intervalstyle = 'iso_8601'", "set local bytea_output = 'hex'",
			"set local extra_float_digits = 1", "set local statement_timeout = 0",
			"set local idle_in_transaction_session_timeout = 0");

	/**
	 * Takes it.
	 * @param connection on which no transaction has begun and none begins by itself
	 */
	static Snapshot take(Connection connection) throws SQLException {
		try (Statement statement = connection.createStatement()) {
			statement.execute("set transaction isolation level repeatable read, read only");
			for (String setting : WRITING) {
				statement.execute(setting);
			}
			try (ResultSet row = statement.executeQuery("select now()")) {
				row.next();
				return new Snapshot(connection, SqlTime.instant(row.getObject(1, OffsetDateTime.class)));
			}
		}
	}

	long rows(List<RegisterTable> tables) throws SQLException {
		long rows = 0;
		for (RegisterTable table : tables) {
			rows += count(table.name());
		}
		return rows;
	}

	long count(String table) throws SQLException {
		try (Statement statement = this.connection.createStatement();
				ResultSet row = statement.executeQuery("select count(*) from " + RegisterTable.quoted(table))) {
			row.next();
			return row.getLong(1);
		}
	}

	/** The migrations that ran, in their order. */
	List<String> scripts() throws SQLException {
		return List.copyOf(history("script", "version is not null and type = 'SQL'").keySet());
	}

	/** The checksums that repeated migrations had when they ran last. */
	Map<String, Integer> repeatables() throws SQLException {
		return history("description", "version is null and installed_rank in (select max(installed_rank) "
				+ "from flyway_schema_history where version is null group by description)");
	}

	private Map<String, Integer> history(String name, String which) throws SQLException {
		Map<String, Integer> history = new TreeMap<>();
		try (Statement statement = this.connection.createStatement();
				ResultSet rows = statement.executeQuery("select " + name + ", checksum from flyway_schema_history "
						+ "where success and checksum is not null and " + which)) {
			while (rows.next()) {
				history.put(rows.getString(1), rows.getInt(2));
			}
		}
		return history;
	}

}
