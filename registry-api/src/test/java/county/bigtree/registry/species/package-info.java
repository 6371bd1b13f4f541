@NullMarked
package county.bigtree.registry.species;

import org.jspecify.annotations.NullMarked;
