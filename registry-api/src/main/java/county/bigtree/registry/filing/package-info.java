/**
 * What somebody filed, and what became of it.
 */
@NullMarked
package county.bigtree.registry.filing;

import org.jspecify.annotations.NullMarked;
