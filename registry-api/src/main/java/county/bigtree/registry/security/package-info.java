/**
 * Finds out who is asking and keeps everyone from what is not theirs.
 */
@NullMarked
package county.bigtree.registry.security;

import org.jspecify.annotations.NullMarked;
