/**
 * Tests of what stories tell, and to whom.
 */
@NullMarked
package county.bigtree.registry.story;

import org.jspecify.annotations.NullMarked;
