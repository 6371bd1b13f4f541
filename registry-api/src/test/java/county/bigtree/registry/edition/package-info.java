/**
 * Editions, tested.
 */
@NullMarked
package county.bigtree.registry.edition;

import org.jspecify.annotations.NullMarked;
