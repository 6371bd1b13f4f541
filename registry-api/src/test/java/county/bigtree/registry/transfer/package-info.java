/**
 * Tests of imports.
 */
@NullMarked
package county.bigtree.registry.transfer;

import org.jspecify.annotations.NullMarked;
