/**
 * What anyone may read of a tree: its place as shown, condition, rank, titles and scores.
 */
@NullMarked
package county.bigtree.registry.lookup;

import org.jspecify.annotations.NullMarked;
