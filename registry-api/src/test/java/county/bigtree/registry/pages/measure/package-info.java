/**
 * Tests of the measuring desk's pages.
 */
@NullMarked
package county.bigtree.registry.pages.measure;

import org.jspecify.annotations.NullMarked;
