/**
 * Nominations and their moves.
 */
@NullMarked
package county.bigtree.registry.nomination;

import org.jspecify.annotations.NullMarked;
