/**
 * Public reads of standings, answered from bytes that are known to be today's.
 */
@NullMarked
package county.bigtree.registry.readcache;

import org.jspecify.annotations.NullMarked;
