/**
 * What a watching program is told: figures of the service and of the register's work.
 */
@NullMarked
package county.bigtree.registry.watch;

import org.jspecify.annotations.NullMarked;
