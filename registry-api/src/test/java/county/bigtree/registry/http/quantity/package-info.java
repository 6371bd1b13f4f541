/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.http.quantity;

import org.jspecify.annotations.NullMarked;
