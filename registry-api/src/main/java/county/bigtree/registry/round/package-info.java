/**
 * The round of a day in the field: whom to visit, in an order that makes a short way.
 */
@NullMarked
package county.bigtree.registry.round;

import org.jspecify.annotations.NullMarked;
