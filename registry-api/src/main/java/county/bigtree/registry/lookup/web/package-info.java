/**
 * Trees over HTTP, as the public may see them.
 */
@NullMarked
package county.bigtree.registry.lookup.web;

import org.jspecify.annotations.NullMarked;
