/**
 * Stories over HTTP.
 */
@NullMarked
package county.bigtree.registry.story.web;

import org.jspecify.annotations.NullMarked;
