/**
 * Tests that nothing private comes out.
 */
@NullMarked
package county.bigtree.registry.disclosure;

import org.jspecify.annotations.NullMarked;
