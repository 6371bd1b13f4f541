/**
 * Tests of the service as a whole.
 */
@NullMarked
package county.bigtree.registry;

import org.jspecify.annotations.NullMarked;
