package county.bigtree.registry.standing;

import java.time.Instant;

import org.jspecify.annotations.Nullable;

/**
 * The state of a book.
 *
 * @param key the book
 * @param seq its version, raised by each change of scores and each event of time
 * @param trees how many trees are ranked
 * @param caughtUpAt the instant up to which its titles are stamped
 * @param nextEventAt when time or a rulebook will next change it, or null
 */
record Book(BookKey key, long seq, int trees, Instant caughtUpAt, @Nullable Instant nextEventAt) {

	boolean due(Instant through) {
		return this.nextEventAt != null && !this.nextEventAt.isAfter(through);
	}

}
