/**
 * The figures over HTTP, for the administrator's watching program.
 */
@NullMarked
package county.bigtree.registry.watch.web;

import org.jspecify.annotations.NullMarked;
