package county.bigtree.registry.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * The changes closed in the present transaction, for who listens.
 */
public record Closed(List<One> changes) {

	/**
	 * Listens from now on to the present transaction.
	 */
	public static void listen() {
		TransactionSynchronizationManager.bindResource(Closed.class, new Closed(new ArrayList<>()));
	}

	/**
	 * Stops listening, and answers what was heard.
	 */
	public static Closed heard() {
		return (Closed) TransactionSynchronizationManager.unbindResource(Closed.class);
	}

	/**
	 * A change that was closed.
	 *
	 * @param counties those that it touches
	 */
	public record One(Instant recordedAt, Set<String> counties, String kind) {

		public One {
			counties = Set.copyOf(counties);
		}

	}

}
