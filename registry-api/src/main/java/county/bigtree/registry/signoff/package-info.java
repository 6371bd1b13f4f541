/**
 * Sign-offs by verifiers, their revocation, and setting measurements aside.
 */
@NullMarked
package county.bigtree.registry.signoff;

import org.jspecify.annotations.NullMarked;
