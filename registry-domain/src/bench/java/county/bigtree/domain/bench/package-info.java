/**
 * How long measuring takes.
 */
@NullMarked
package county.bigtree.domain.bench;

import org.jspecify.annotations.NullMarked;
