/**
 * Editions: a county's published lists, kept as they were published, with their errata.
 */
@NullMarked
package county.bigtree.registry.edition;

import org.jspecify.annotations.NullMarked;
