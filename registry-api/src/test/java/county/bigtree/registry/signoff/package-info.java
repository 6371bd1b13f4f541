/**
 * Tests of filing, signing off and what follows.
 */
@NullMarked
package county.bigtree.registry.signoff;

import org.jspecify.annotations.NullMarked;
