/**
 * What a tree's figures are worth in points, and how surely one score is above another.
 */
@NullMarked
package county.bigtree.domain.points;

import org.jspecify.annotations.NullMarked;
