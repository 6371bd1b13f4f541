/**
 * What happened to a tree, or to a species in a county, told in order of recording, as
 * far as the asker may see.
 */
@NullMarked
package county.bigtree.registry.story;

import org.jspecify.annotations.NullMarked;
