/**
 * People, their accounts and their roles in counties.
 */
@NullMarked
package county.bigtree.registry.people;

import org.jspecify.annotations.NullMarked;
