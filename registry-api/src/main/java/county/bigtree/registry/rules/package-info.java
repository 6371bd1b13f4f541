/**
 * The rules and the time zone of a county, as recorded.
 */
@NullMarked
package county.bigtree.registry.rules;

import org.jspecify.annotations.NullMarked;
