/**
 * Visits: work for verifiers at trees, and what came of it.
 */
@NullMarked
package county.bigtree.registry.visit;

import org.jspecify.annotations.NullMarked;
