/**
 * One's own filings over HTTP.
 */
@NullMarked
package county.bigtree.registry.filing.web;

import org.jspecify.annotations.NullMarked;
