/**
 * Counties over HTTP.
 */
@NullMarked
package county.bigtree.registry.county.web;

import org.jspecify.annotations.NullMarked;
