/**
 * The measuring desk: readings typed into a form, worked out line by line. Nothing is
 * kept; the address holds all.
 */
@NullMarked
package county.bigtree.registry.pages.measure;

import org.jspecify.annotations.NullMarked;
