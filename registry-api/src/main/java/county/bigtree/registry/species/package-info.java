/**
 * Which species a tree can be, and what leads from a name to one of them.
 */
@NullMarked
package county.bigtree.registry.species;

import org.jspecify.annotations.NullMarked;
