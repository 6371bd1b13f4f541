/**
 * Readings tried out over HTTP, by anyone and without a trace.
 */
@NullMarked
package county.bigtree.registry.measuring.web;

import org.jspecify.annotations.NullMarked;
