/**
 * Lengths and angles as people enter them, and figures with their standard uncertainty.
 */
@NullMarked
package county.bigtree.domain.quantity;

import org.jspecify.annotations.NullMarked;
