/**
 * Quantities and readings as they stand in JSON, in and out as entered.
 */
@NullMarked
package county.bigtree.registry.http.quantity;

import org.jspecify.annotations.NullMarked;
