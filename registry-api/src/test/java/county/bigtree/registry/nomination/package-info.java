/**
 * Tests of nominations and of what the register does about them by itself.
 */
@NullMarked
package county.bigtree.registry.nomination;

import org.jspecify.annotations.NullMarked;
