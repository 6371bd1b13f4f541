/**
 * Tests of decisions on trees.
 */
@NullMarked
package county.bigtree.registry.tree;

import org.jspecify.annotations.NullMarked;
