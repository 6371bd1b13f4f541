/**
 * Tests of the journal over HTTP.
 */
@NullMarked
package county.bigtree.registry.journal.web;

import org.jspecify.annotations.NullMarked;
