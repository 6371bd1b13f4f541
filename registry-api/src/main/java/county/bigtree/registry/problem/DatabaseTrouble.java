package county.bigtree.registry.problem;

import java.sql.SQLException;
import java.sql.SQLRecoverableException;
import java.sql.SQLTransientConnectionException;
import java.util.Set;

/**
 * Failures because the database went away, can't be reached, or has no room left. What
 * was being committed then may be recorded or not.
 */
public final class DatabaseTrouble {

	/**
	 * Connection exception, and insufficient resources: too many connections, no memory,
	 * a full disk (PostgreSQL manual, appendix A).
	 */
	private static final Set<String> CLASSES = Set.of("08", "53");

	/**
	 * Admin shutdown, crash shutdown, cannot connect now, a failure to read or write, and
	 * read-only after the server stepped back.
	 */
	private static final Set<String> STATES = Set.of("57P01", "57P02", "57P03", "58030", "25006");

	/** What the pool says of a connection that it has given up; it names no state. */
	private static final String GIVEN_UP = "Connection is closed";

	private DatabaseTrouble() {
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
		return CLASSES.contains(state.substring(0, Math.min(2, state.length()))) || STATES.contains(state)
				|| failure instanceof SQLTransientConnectionException || failure instanceof SQLRecoverableException
				|| GIVEN_UP.equals(failure.getMessage());
	}

}
