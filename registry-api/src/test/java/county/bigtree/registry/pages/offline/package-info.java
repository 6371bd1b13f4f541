/**
 * Tests of what works without a network, as far as they need no browser.
 */
@NullMarked
package county.bigtree.registry.pages.offline;

import org.jspecify.annotations.NullMarked;
