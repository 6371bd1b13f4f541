/**
 * Nominations over HTTP.
 */
@NullMarked
package county.bigtree.registry.nomination.web;

import org.jspecify.annotations.NullMarked;
