/**
 * Migrations that need more than SQL, in the package where Flyway looks for them.
 */
@NullMarked
package db.migration;

import org.jspecify.annotations.NullMarked;
