/**
 * What there is to print, asked for over HTTP.
 */
@NullMarked
package county.bigtree.registry.pages.paper;

import org.jspecify.annotations.NullMarked;
