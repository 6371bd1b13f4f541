package county.bigtree.registry.problem;

import java.sql.SQLException;
import java.sql.SQLRecoverableException;
import java.sql.SQLTransientConnectionException;
import java.util.Set;

/**
 * Failures because the database went away or can't be reached. What was being committed
 * then may be recorded or not.
 */
public final class ConnectionLoss {

	/** All of class 08, connection exception, begin so. */
	private static final String CONNECTION_EXCEPTION = "08";

	/**
	 * Admin shutdown, crash shutdown, cannot connect now, and read-only after the server
	 * stepped back (PostgreSQL manual, appendix A).
	 */
	private static final Set<String> STATES = Set.of("57P01", "57P02", "57P03", "25006");

	/** What the pool says of a connection that it has given up; it names no state. */
	private static final String GIVEN_UP = "Connection is closed";

	private ConnectionLoss() {
	}

	public static boolean caused(Throwable failure) {
		for (Throwable at = failure; at != null; at = at.getCause()) {
			if (at instanceof SQLException sql && isLoss(sql)) {
				return true;
			}
		}
		return false;
	}

	private static boolean isLoss(SQLException failure) {
		String state = String.valueOf(failure.getSQLState());
		return state.startsWith(CONNECTION_EXCEPTION) || STATES.contains(state)
				|| failure instanceof SQLTransientConnectionException || failure instanceof SQLRecoverableException
				|| GIVEN_UP.equals(failure.getMessage());
	}

}
