/**
 * Whether the service lives and can do its work.
 */
@NullMarked
package county.bigtree.registry.health;

import org.jspecify.annotations.NullMarked;
