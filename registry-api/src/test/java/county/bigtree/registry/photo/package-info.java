/**
 * Tests of the photos: who may see them, what is decided on them, and what is erased.
 */
@NullMarked
package county.bigtree.registry.photo;

import org.jspecify.annotations.NullMarked;
