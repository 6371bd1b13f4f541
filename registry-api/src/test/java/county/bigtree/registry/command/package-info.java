/**
 * Tests of the commands.
 */
@NullMarked
package county.bigtree.registry.command;

import org.jspecify.annotations.NullMarked;
