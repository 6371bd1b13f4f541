/**
 * The handover over HTTP.
 */
@NullMarked
package county.bigtree.registry.handover.web;

import org.jspecify.annotations.NullMarked;
