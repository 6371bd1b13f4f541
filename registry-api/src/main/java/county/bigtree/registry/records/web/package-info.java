/**
 * Records over HTTP.
 */
@NullMarked
package county.bigtree.registry.records.web;

import org.jspecify.annotations.NullMarked;
