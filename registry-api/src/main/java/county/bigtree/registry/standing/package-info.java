/**
 * Scores, standings and titles: kept up to date with each change and with time, and
 * asked.
 */
@NullMarked
package county.bigtree.registry.standing;

import org.jspecify.annotations.NullMarked;
