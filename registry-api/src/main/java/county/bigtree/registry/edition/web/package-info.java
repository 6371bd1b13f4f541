/**
 * Editions over HTTP.
 */
@NullMarked
package county.bigtree.registry.edition.web;

import org.jspecify.annotations.NullMarked;
