/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.http;

import org.jspecify.annotations.NullMarked;
