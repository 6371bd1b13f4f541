package county.bigtree.domain.review;

import java.util.Set;

import org.jspecify.annotations.Nullable;

/**
 * Those who can't judge a measurement of a tree, because it is theirs. Whoever merely
 * typed the filing is not among them.
 *
 * @param finder who nominated the tree, or null for somebody without an account
 * @param measurers of the measurement
 * @param owners of the tree
 */
public record Interested(@Nullable PersonId finder, Set<PersonId> measurers, Set<PersonId> owners) {

	public Interested {
		measurers = Set.copyOf(measurers);
		owners = Set.copyOf(owners);
	}

}
