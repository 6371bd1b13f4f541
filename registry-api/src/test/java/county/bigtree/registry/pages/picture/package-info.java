/**
 * Where things lie in the pictures.
 */
@NullMarked
package county.bigtree.registry.pages.picture;

import org.jspecify.annotations.NullMarked;
