/**
 * Who looked at what is private.
 */
@NullMarked
package county.bigtree.registry.opening;

import org.jspecify.annotations.NullMarked;
