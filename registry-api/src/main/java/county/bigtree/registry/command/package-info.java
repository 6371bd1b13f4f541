/**
 * Commands given in place of serving: the first word after the jar.
 */
@NullMarked
package county.bigtree.registry.command;

import org.jspecify.annotations.NullMarked;
