/**
 * Owners and their consents over HTTP.
 */
@NullMarked
package county.bigtree.registry.owner.web;

import org.jspecify.annotations.NullMarked;
