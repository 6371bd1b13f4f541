/**
 * What the public may take away of the register: trees, standings and scores as files,
 * features, an archive and feeds, in the forms that other software reads.
 */
@NullMarked
package county.bigtree.registry.openness;

import org.jspecify.annotations.NullMarked;
