/**
 * Tests of the object store for pictures.
 */
@NullMarked
package county.bigtree.registry.photo.store;

import org.jspecify.annotations.NullMarked;
