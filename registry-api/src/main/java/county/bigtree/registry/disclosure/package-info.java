/**
 * How trees are shown today to those who don't work on them.
 */
@NullMarked
package county.bigtree.registry.disclosure;

import org.jspecify.annotations.NullMarked;
