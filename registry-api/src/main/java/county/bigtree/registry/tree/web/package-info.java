/**
 * Corrections of trees over HTTP.
 */
@NullMarked
package county.bigtree.registry.tree.web;

import org.jspecify.annotations.NullMarked;
