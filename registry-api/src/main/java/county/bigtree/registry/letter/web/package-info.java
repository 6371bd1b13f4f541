/**
 * Letters over HTTP.
 */
@NullMarked
package county.bigtree.registry.letter.web;

import org.jspecify.annotations.NullMarked;
