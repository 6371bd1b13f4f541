/**
 * A coordinator's desk: what waits for a decision, and which trees are due to be measured
 * again.
 */
@NullMarked
package county.bigtree.registry.desk;

import org.jspecify.annotations.NullMarked;
