/**
 * One tree measured by several groups of a class, and what can be learned from it.
 */
@NullMarked
package county.bigtree.domain.classroom;

import org.jspecify.annotations.NullMarked;
