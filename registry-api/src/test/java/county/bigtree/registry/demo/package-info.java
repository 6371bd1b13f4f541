/**
 * The demo, told whole.
 */
@NullMarked
package county.bigtree.registry.demo;

import org.jspecify.annotations.NullMarked;
