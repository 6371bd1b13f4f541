/**
 * The rules of a county's big-tree register, with no framework: what is measured, what it
 * is worth, who may say so.
 */
@NullMarked
package county.bigtree.domain;

import org.jspecify.annotations.NullMarked;
