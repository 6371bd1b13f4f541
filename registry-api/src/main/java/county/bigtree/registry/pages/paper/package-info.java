/**
 * What there is to print: sheets for the field and the class, packets, certificates,
 * letters and the yearly rankings.
 */
@NullMarked
package county.bigtree.registry.pages.paper;

import org.jspecify.annotations.NullMarked;
