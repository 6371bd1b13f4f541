/**
 * Every change: its instant, its place in the county's chain, and what it wrote.
 */
@NullMarked
package county.bigtree.registry.journal;

import org.jspecify.annotations.NullMarked;
