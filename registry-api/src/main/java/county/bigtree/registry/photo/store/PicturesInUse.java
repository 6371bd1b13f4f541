package county.bigtree.registry.photo.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Holds off the deleting of objects while all pictures of an instant are read. A lock of
 * the database that ends with the connection which took it.
 */
public final class PicturesInUse {

	/** Any number that nothing else locks. */
	private static final long LOCK = 202_611_270_520L;

	private static final long PAUSE_MILLIS = 100;

	private PicturesInUse() {
	}

	/**
	 * Waits until none is being deleted, and keeps it so.
	 * @param connection on which no transaction has begun
	 */
	public static void begin(Connection connection) throws SQLException {
		while (!ask(connection, "select pg_try_advisory_lock_shared(" + LOCK + ")")) {
			try {
				Thread.sleep(PAUSE_MILLIS);
			}
			catch (InterruptedException ex) {
				Thread.currentThread().interrupt();
				throw new SQLException("Interrupted while objects were being deleted", ex);
			}
		}
	}

	/** Lets them be deleted again, as far as this connection is concerned. */
	public static void end(Connection connection) {
		try (Statement statement = connection.createStatement()) {
			statement.execute("select pg_advisory_unlock_shared(" + LOCK + ")");
		}
		catch (SQLException ex) {
			// Where copying was broken off, that is what is told. The lock ends with
			// the connection.
		}
	}

	/** Whether the current transaction may delete, until it ends. */
	static boolean mayDelete(JdbcClient jdbc) {
		return jdbc.sql("select pg_try_advisory_xact_lock(" + LOCK + ")").query(Boolean.class).single();
	}

	private static boolean ask(Connection connection, String question) throws SQLException {
		try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(question)) {
			return row.next() && row.getBoolean(1);
		}
	}

}
