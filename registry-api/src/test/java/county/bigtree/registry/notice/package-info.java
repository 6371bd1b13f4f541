/**
 * Tests.
 */
@NullMarked
package county.bigtree.registry.notice;

import org.jspecify.annotations.NullMarked;
