/**
 * How an endpoint says who may call it.
 */
@NullMarked
package county.bigtree.registry.access;

import org.jspecify.annotations.NullMarked;
