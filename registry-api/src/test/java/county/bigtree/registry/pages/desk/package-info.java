/**
 * Tests of the coordinator's desk, as its pages are used without scripts.
 */
@NullMarked
package county.bigtree.registry.pages.desk;

import org.jspecify.annotations.NullMarked;
