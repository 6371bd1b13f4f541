/**
 * Measurements over HTTP.
 */
@NullMarked
package county.bigtree.registry.measurement.web;

import org.jspecify.annotations.NullMarked;
