/**
 * Sessions of people who sign in with a cookie, kept in the database for all nodes.
 */
@NullMarked
package county.bigtree.registry.session;

import org.jspecify.annotations.NullMarked;
