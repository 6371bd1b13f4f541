/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.description;

import org.jspecify.annotations.NullMarked;
