/**
 * Tests of reads answered by a standby.
 */
@NullMarked
package county.bigtree.registry.standby;

import org.jspecify.annotations.NullMarked;
