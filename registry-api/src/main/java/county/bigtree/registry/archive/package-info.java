/**
 * The whole register as one file, and a register made of such a file again.
 */
@NullMarked
package county.bigtree.registry.archive;

import org.jspecify.annotations.NullMarked;
