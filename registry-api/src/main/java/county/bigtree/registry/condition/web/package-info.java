/**
 * Condition reports over HTTP.
 */
@NullMarked
package county.bigtree.registry.condition.web;

import org.jspecify.annotations.NullMarked;
