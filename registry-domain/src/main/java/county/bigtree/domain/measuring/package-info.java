/**
 * Readings taken at a tree, one record a method, each with its formula, its uncertainty
 * and its arithmetic.
 */
@NullMarked
package county.bigtree.domain.measuring;

import org.jspecify.annotations.NullMarked;
