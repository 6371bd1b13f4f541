/**
 * Tests of the open data.
 */
@NullMarked
package county.bigtree.registry.openness;

import org.jspecify.annotations.NullMarked;
