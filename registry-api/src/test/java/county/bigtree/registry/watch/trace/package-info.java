@NullMarked
package county.bigtree.registry.watch.trace;

import org.jspecify.annotations.NullMarked;
