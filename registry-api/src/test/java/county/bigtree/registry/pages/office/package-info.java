/**
 * The pages of an office, walked without scripts.
 */
@NullMarked
package county.bigtree.registry.pages.office;

import org.jspecify.annotations.NullMarked;
