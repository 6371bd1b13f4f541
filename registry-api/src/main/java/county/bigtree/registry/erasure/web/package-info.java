/**
 * Erasing words over HTTP.
 */
@NullMarked
package county.bigtree.registry.erasure.web;

import org.jspecify.annotations.NullMarked;
