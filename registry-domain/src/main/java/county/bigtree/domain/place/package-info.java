/**
 * Where a tree stands, and how much of that is shown.
 */
@NullMarked
package county.bigtree.domain.place;

import org.jspecify.annotations.NullMarked;
