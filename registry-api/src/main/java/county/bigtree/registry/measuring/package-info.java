/**
 * Readings tried out: what they come to, and how that compares.
 */
@NullMarked
package county.bigtree.registry.measuring;

import org.jspecify.annotations.NullMarked;
