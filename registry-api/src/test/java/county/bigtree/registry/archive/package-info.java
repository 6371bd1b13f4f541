/**
 * Archives written, damaged, restored and compared.
 */
@NullMarked
package county.bigtree.registry.archive;

import org.jspecify.annotations.NullMarked;
