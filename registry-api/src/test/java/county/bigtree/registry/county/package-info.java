/**
 * Tests of county over HTTP.
 */
@NullMarked
package county.bigtree.registry.county;

import org.jspecify.annotations.NullMarked;
