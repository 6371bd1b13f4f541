/**
 * The registry's schema and the PostgreSQL server that comes with it.
 */
@NullMarked
package county.bigtree.db;

import org.jspecify.annotations.NullMarked;
