/**
 * Placeholder.
 */
@NullMarked
package county.bigtree.db;

import org.jspecify.annotations.NullMarked;
