/**
 * Tests of letters.
 */
@NullMarked
package county.bigtree.registry.letter;

import org.jspecify.annotations.NullMarked;
