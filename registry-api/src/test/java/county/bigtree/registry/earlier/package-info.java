/**
 * Registers that earlier releases wrote.
 */
@NullMarked
package county.bigtree.registry.earlier;

import org.jspecify.annotations.NullMarked;
