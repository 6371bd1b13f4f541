package county.bigtree.registry.people;

import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * Work of one kind that is assigned to people, and goes back to the coordinators when
 * those can't do it any more. What happens is recorded as the move it is, in the
 * transaction of whoever decided it.
 */
public interface AssignedWork {

	/** Hands back what the one who leaves has open. */
	void handBack(Leaving leaving);

	/**
	 * Someone who no longer verifies.
	 *
	 * @param county where; null for everywhere
	 * @param by who decided it
	 * @param reason as the moves give it
	 */
	record Leaving(UUID person, @Nullable String county, UUID by, String reason) {
	}

}
