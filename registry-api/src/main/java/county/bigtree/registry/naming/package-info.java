/**
 * Names of species and counties for those who read: keys are for programs.
 */
@NullMarked
package county.bigtree.registry.naming;

import org.jspecify.annotations.NullMarked;
