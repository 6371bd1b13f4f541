/**
 * Tests of the pages.
 */
@NullMarked
package county.bigtree.registry.pages;

import org.jspecify.annotations.NullMarked;
