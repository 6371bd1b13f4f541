/**
 * Tests of the taking apart and packing anew of pictures, and files for them.
 */
@NullMarked
package county.bigtree.registry.photo.image;

import org.jspecify.annotations.NullMarked;
