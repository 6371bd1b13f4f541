/**
 * Accounts, invitations and tokens over HTTP.
 */
@NullMarked
package county.bigtree.registry.people.web;

import org.jspecify.annotations.NullMarked;
