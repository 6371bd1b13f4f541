/**
 * The species catalogue over HTTP.
 */
@NullMarked
package county.bigtree.registry.species.web;

import org.jspecify.annotations.NullMarked;
