/**
 * Erasing words about people who ask for it.
 */
@NullMarked
package county.bigtree.registry.erasure;

import org.jspecify.annotations.NullMarked;
