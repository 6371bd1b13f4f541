/**
 * What volunteers and anybody else send in by the pages: nominations, remeasurements,
 * reports, letters, and what became of them.
 */
@NullMarked
package county.bigtree.registry.pages.filing;

import org.jspecify.annotations.NullMarked;
