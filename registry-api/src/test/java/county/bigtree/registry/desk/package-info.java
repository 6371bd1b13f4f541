/**
 * Tests of a coordinator's desk.
 */
@NullMarked
package county.bigtree.registry.desk;

import org.jspecify.annotations.NullMarked;
