/**
 * Puts the checks on what is filed to work: what they know, what they ask, who answers.
 */
@NullMarked
package county.bigtree.registry.check;

import org.jspecify.annotations.NullMarked;
