/**
 * Standings and titles over HTTP.
 */
@NullMarked
package county.bigtree.registry.standing.web;

import org.jspecify.annotations.NullMarked;
