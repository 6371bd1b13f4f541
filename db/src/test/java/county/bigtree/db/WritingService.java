package county.bigtree.db;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * A service in a JVM of its own that writes rows as fast as it can, and says the number
 * of each after the database has acknowledged it.
 */
final class WritingService {

	private WritingService() {
	}

	public static void main(String[] arguments) throws SQLException {
		EmbeddedDatabase database = EmbeddedDatabase.start(Path.of(arguments[0]));
		try (Connection connection = database.owner().dataSource().getConnection();
				Statement statement = connection.createStatement()) {
			statement.execute("create table if not exists filing (number bigint primary key)");
			for (long number = 1; true; number++) {
				statement.execute("insert into filing values (" + number + ")");
				System.out.println(number);
			}
		}
		catch (SQLException ex) {
			sleepUntilKilled();
		}
	}

	private static void sleepUntilKilled() {
		try {
			Thread.sleep(Long.MAX_VALUE);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
		}
	}

}
