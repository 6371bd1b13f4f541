/**
 * Traces for a watching program, where one takes them.
 */
@NullMarked
package county.bigtree.registry.watch.trace;

import org.jspecify.annotations.NullMarked;
