/**
 * Imports over HTTP.
 */
@NullMarked
package county.bigtree.registry.transfer.web;

import org.jspecify.annotations.NullMarked;
