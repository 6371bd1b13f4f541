/**
 * The database that the service works on, its own or one it is given, and how it is
 * asked.
 */
@NullMarked
package county.bigtree.registry.database;

import org.jspecify.annotations.NullMarked;
