/**
 * Everything that the service may answer when it can't do what was asked, in one
 * catalogue.
 */
@NullMarked
package county.bigtree.registry.problem;

import org.jspecify.annotations.NullMarked;
