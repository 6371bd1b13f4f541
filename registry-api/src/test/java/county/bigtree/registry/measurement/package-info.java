/**
 * Tests of measurement over HTTP.
 */
@NullMarked
package county.bigtree.registry.measurement;

import org.jspecify.annotations.NullMarked;
