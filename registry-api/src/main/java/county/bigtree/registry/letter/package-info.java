/**
 * Letters: what anybody writes to a county, and what becomes of it.
 */
@NullMarked
package county.bigtree.registry.letter;

import org.jspecify.annotations.NullMarked;
