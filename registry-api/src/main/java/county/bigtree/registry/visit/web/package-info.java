/**
 * Visits over HTTP.
 */
@NullMarked
package county.bigtree.registry.visit.web;

import org.jspecify.annotations.NullMarked;
