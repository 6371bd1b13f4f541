/**
 * Trees on the books: registration, identification and place.
 */
@NullMarked
package county.bigtree.registry.tree;

import org.jspecify.annotations.NullMarked;
