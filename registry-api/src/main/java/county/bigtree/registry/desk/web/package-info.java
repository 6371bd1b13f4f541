/**
 * A coordinator's desk over HTTP.
 */
@NullMarked
package county.bigtree.registry.desk.web;

import org.jspecify.annotations.NullMarked;
