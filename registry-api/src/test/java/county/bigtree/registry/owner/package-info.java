/**
 * Tests of owners and their consents.
 */
@NullMarked
package county.bigtree.registry.owner;

import org.jspecify.annotations.NullMarked;
