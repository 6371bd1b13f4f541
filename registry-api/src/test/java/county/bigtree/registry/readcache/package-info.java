/**
 * Tests of public reads answered from kept bytes.
 */
@NullMarked
package county.bigtree.registry.readcache;

import org.jspecify.annotations.NullMarked;
