/**
 * Everything on record about a tree, a species, a person or a span of days, in one
 * folder, as the one who asks may see it.
 */
@NullMarked
package county.bigtree.registry.records;

import org.jspecify.annotations.NullMarked;
