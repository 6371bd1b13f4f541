package county.bigtree.registry.journal;

import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * Is told of each change at its end, within its transaction: what the watcher writes is
 * kept with the facts, or not at all.
 */
public interface ChangeWatcher {

	/**
	 * A change has been written whole.
	 * @param kind what happened
	 * @param actor who caused it, or null for the register itself
	 */
	void closed(Change change, String kind, @Nullable UUID actor);

	/**
	 * Time did what fell due in a book of the county at the instant.
	 */
	void caughtUp(String county, Instant at);

}
