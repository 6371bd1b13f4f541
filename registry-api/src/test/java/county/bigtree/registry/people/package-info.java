/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.people;

import org.jspecify.annotations.NullMarked;
