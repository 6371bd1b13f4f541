/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.problem;

import org.jspecify.annotations.NullMarked;
