/**
 * What looks whether the register is whole: its checks, and what they find.
 */
@NullMarked
package county.bigtree.registry.audit;

import org.jspecify.annotations.NullMarked;
