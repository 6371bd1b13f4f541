/**
 * Who may decide what about a filing, and whether two sets of figures agree.
 */
@NullMarked
package county.bigtree.domain.review;

import org.jspecify.annotations.NullMarked;
