package county.bigtree.db;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class HandedOutDatabaseIT {

	@Test
	void handsOutMigratedDatabasesThatDoNotShareRows() throws SQLException {
		try (TestDatabase first = TestDatabase.migrated(); TestDatabase second = TestDatabase.migrated()) {
			execute(first.owner(), "create table note (body text)");
			assertThat(tables(first.service())).contains("note", "changeable_table");
			assertThat(tables(second.service())).contains("changeable_table").doesNotContain("note");
		}
	}

	private static void execute(DatabaseLogin login, String sql) throws SQLException {
		try (Connection connection = login.dataSource().getConnection();
				Statement statement = connection.createStatement()) {
			statement.execute(sql);
		}
	}

	private static List<String> tables(DatabaseLogin login) throws SQLException {
		List<String> tables = new ArrayList<>();
		try (Connection connection = login.dataSource().getConnection();
				Statement statement = connection.createStatement();
				ResultSet answer = statement
					.executeQuery("select relname from pg_class where relnamespace = 'public'::regnamespace")) {
			while (answer.next()) {
				tables.add(answer.getString(1));
			}
		}
		return tables;
	}

}
