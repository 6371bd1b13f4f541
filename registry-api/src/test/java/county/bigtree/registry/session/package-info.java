/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.session;

import org.jspecify.annotations.NullMarked;
