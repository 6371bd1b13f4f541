/**
 * The coordinator's desk: what waits, and each decision with what it would change.
 */
@NullMarked
package county.bigtree.registry.pages.desk;

import org.jspecify.annotations.NullMarked;
