/**
 * The addresses of the open data.
 */
@NullMarked
package county.bigtree.registry.openness.web;

import org.jspecify.annotations.NullMarked;
