/**
 * Counties and their rulebooks.
 */
@NullMarked
package county.bigtree.registry.county;

import org.jspecify.annotations.NullMarked;
