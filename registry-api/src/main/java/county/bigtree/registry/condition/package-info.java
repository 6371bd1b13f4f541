/**
 * Condition reports and the decisions on them.
 */
@NullMarked
package county.bigtree.registry.condition;

import org.jspecify.annotations.NullMarked;
