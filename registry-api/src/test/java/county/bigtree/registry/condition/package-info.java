/**
 * Tests of condition over HTTP.
 */
@NullMarked
package county.bigtree.registry.condition;

import org.jspecify.annotations.NullMarked;
