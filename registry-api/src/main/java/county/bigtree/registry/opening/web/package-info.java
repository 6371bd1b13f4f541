/**
 * Who looked at what is private, over HTTP.
 */
@NullMarked
package county.bigtree.registry.opening.web;

import org.jspecify.annotations.NullMarked;
