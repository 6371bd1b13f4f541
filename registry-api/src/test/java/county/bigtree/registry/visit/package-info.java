/**
 * Tests of visits.
 */
@NullMarked
package county.bigtree.registry.visit;

import org.jspecify.annotations.NullMarked;
