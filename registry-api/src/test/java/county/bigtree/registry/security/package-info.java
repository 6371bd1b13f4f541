/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.security;

import org.jspecify.annotations.NullMarked;
