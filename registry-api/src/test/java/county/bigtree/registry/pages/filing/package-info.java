/**
 * What volunteers and anybody else send in by the pages, without scripts.
 */
@NullMarked
package county.bigtree.registry.pages.filing;

import org.jspecify.annotations.NullMarked;
