/**
 * What is done by the clock to keep the register safe, and who is told when it fails.
 */
@NullMarked
package county.bigtree.registry.upkeep;

import org.jspecify.annotations.NullMarked;
