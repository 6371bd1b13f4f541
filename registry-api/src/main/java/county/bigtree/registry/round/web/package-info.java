/**
 * Rounds over HTTP, and to take along as GPX and iCalendar.
 */
@NullMarked
package county.bigtree.registry.round.web;

import org.jspecify.annotations.NullMarked;
