/**
 * One's own filings.
 */
@NullMarked
package county.bigtree.registry.filing;

import org.jspecify.annotations.NullMarked;
