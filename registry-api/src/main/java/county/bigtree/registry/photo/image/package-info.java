/**
 * Makes pictures fit to be kept and shown out of files that strangers sent.
 */
@NullMarked
package county.bigtree.registry.photo.image;

import org.jspecify.annotations.NullMarked;
