/**
 * Plausibility: what the size of a tree can be.
 */
@NullMarked
package county.bigtree.domain.check;

import org.jspecify.annotations.NullMarked;
