/**
 * Tests of standings over HTTP.
 */
@NullMarked
package county.bigtree.registry.standing.web;

import org.jspecify.annotations.NullMarked;
