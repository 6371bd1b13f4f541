/**
 * The handover over HTTP, as JSON and as a page to print.
 */
@NullMarked
package county.bigtree.registry.handover.web;

import org.jspecify.annotations.NullMarked;
