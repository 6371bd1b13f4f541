/**
 * Notices over HTTP.
 */
@NullMarked
package county.bigtree.registry.notice.web;

import org.jspecify.annotations.NullMarked;
