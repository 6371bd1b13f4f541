/**
 * Tests of erasing words.
 */
@NullMarked
package county.bigtree.registry.erasure;

import org.jspecify.annotations.NullMarked;
