/**
 * Heavy public reads answered by a standby of the database, where one is named.
 */
@NullMarked
package county.bigtree.registry.standby;

import org.jspecify.annotations.NullMarked;
