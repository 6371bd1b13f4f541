/**
 * Tests of how the register is kept safe.
 */
@NullMarked
package county.bigtree.registry.upkeep;

import org.jspecify.annotations.NullMarked;
