/**
 * Placeholder.
 */
@NullMarked
package county.bigtree.domain;

import org.jspecify.annotations.NullMarked;
