/**
 * Databases for tests, and the tests of the schema and of the embedded server.
 */
@NullMarked
package county.bigtree.db;

import org.jspecify.annotations.NullMarked;
