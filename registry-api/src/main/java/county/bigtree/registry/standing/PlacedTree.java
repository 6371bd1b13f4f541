package county.bigtree.registry.standing;

import county.bigtree.domain.standing.TreeFacts;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a tree, and the book in which it is ranked; null while it is not
 * identified to the species.
 */
record PlacedTree(TreeFacts facts, @Nullable BookKey book) {
}
