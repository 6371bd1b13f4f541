/**
 * Papers, read again by programs that didn't make them.
 */
@NullMarked
package county.bigtree.registry.paper;

import org.jspecify.annotations.NullMarked;
