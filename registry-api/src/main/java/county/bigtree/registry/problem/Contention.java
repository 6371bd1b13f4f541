package county.bigtree.registry.problem;

import java.sql.SQLException;
import java.util.Set;

import org.springframework.dao.ConcurrencyFailureException;

/**
 * Tells failures that come from others writing at the same place, which the same request
 * tried again may escape, from all others.
 */
public final class Contention {

	/**
	 * Serialisation failure, deadlock, lock not available (PostgreSQL manual, appendix
	 * A).
	 */
	private static final Set<String> STATES = Set.of("40001", "40P01", "55P03");

	private Contention() {
	}

	public static boolean caused(Throwable failure) {
		for (Throwable at = failure; at != null; at = at.getCause()) {
			if (at instanceof ConcurrencyFailureException
					|| at instanceof SQLException sql && STATES.contains(String.valueOf(sql.getSQLState()))) {
				return true;
			}
		}
		return false;
	}

}
