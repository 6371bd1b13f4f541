/**
 * Papers: pages set for printing, as tagged PDF with its own fonts.
 */
@NullMarked
package county.bigtree.registry.paper;

import org.jspecify.annotations.NullMarked;
