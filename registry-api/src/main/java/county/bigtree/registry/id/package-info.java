/**
 * Identifiers.
 */
@NullMarked
package county.bigtree.registry.id;

import org.jspecify.annotations.NullMarked;
