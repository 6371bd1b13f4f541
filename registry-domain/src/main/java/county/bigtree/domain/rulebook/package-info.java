/**
 * A county's rules by the date from which they hold.
 */
@NullMarked
package county.bigtree.domain.rulebook;

import org.jspecify.annotations.NullMarked;
