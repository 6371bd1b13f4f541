/**
 * Sign-offs over HTTP.
 */
@NullMarked
package county.bigtree.registry.signoff.web;

import org.jspecify.annotations.NullMarked;
