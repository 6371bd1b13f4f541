/**
 * What goes between the register and files: older records taken in.
 */
@NullMarked
package county.bigtree.registry.transfer;

import org.jspecify.annotations.NullMarked;
