/**
 * The demo: three invented counties, their story told through the very use cases.
 */
@NullMarked
package county.bigtree.registry.demo;

import org.jspecify.annotations.NullMarked;
