/**
 * Photos of trees: sent by volunteers, private until somebody of the county passes them.
 */
@NullMarked
package county.bigtree.registry.photo;

import org.jspecify.annotations.NullMarked;
