/**
 * The object store in which pictures may stand instead of in the database.
 */
@NullMarked
package county.bigtree.registry.photo.store;

import org.jspecify.annotations.NullMarked;
