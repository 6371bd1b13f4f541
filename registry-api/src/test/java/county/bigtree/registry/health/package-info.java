/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.health;

import org.jspecify.annotations.NullMarked;
