/**
 * Placeholder.
 */
@NullMarked
package county.bigtree.registry;

import org.jspecify.annotations.NullMarked;
