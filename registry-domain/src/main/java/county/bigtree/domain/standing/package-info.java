/**
 * Who leads: score spans, contention, holders of titles, ranks and leads.
 */
@NullMarked
package county.bigtree.domain.standing;

import org.jspecify.annotations.NullMarked;
