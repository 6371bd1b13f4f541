/**
 * A county's open work in one account, for who takes the office over.
 */
@NullMarked
package county.bigtree.registry.handover;

import org.jspecify.annotations.NullMarked;
