/**
 * The journal over HTTP, for coordinators.
 */
@NullMarked
package county.bigtree.registry.journal.web;

import org.jspecify.annotations.NullMarked;
