/**
 * How the register is kept safe, over HTTP.
 */
@NullMarked
package county.bigtree.registry.upkeep.web;

import org.jspecify.annotations.NullMarked;
