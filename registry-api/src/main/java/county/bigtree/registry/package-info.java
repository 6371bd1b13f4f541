/**
 * The service as it is started.
 */
@NullMarked
package county.bigtree.registry;

import org.jspecify.annotations.NullMarked;
