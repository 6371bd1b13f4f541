/**
 * Rounds, tested.
 */
@NullMarked
package county.bigtree.registry.round;

import org.jspecify.annotations.NullMarked;
