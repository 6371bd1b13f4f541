/**
 * Tests of how the service comes to its database.
 */
@NullMarked
package county.bigtree.registry.database;

import org.jspecify.annotations.NullMarked;
