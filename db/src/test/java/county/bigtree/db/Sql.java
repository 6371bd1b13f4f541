package county.bigtree.db;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/**
 * Single statements, each in a connection of its own.
 */
record Sql(DatabaseLogin login) {

	static final String DONE = "done";

	void execute(String sql) throws SQLException {
		try (Connection connection = this.login.dataSource().getConnection();
				Statement statement = connection.createStatement()) {
			statement.execute(sql);
		}
	}

	/**
	 * The first column of each row.
	 */
	List<String> list(String query) throws SQLException {
		List<String> values = new ArrayList<>();
		try (Connection connection = this.login.dataSource().getConnection();
				Statement statement = connection.createStatement();
				ResultSet answer = statement.executeQuery(query)) {
			while (answer.next()) {
				values.add(answer.getString(1));
			}
		}
		return values;
	}

	String get(String query) throws SQLException {
		return list(query).get(0);
	}

	/**
	 * The SQLSTATE of a refused statement, or {@link #DONE}.
	 */
	String outcome(String sql) {
		try {
			execute(sql);
			return DONE;
		}
		catch (SQLException ex) {
			return String.valueOf(ex.getSQLState());
		}
	}

}
