package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;

/**
 * The two times of a question: the day that is asked about, and the instant up to which
 * is known.
 *
 * @param day the day
 * @param knownAt nothing recorded later is used
 * @param present whether this is today by all that is known, which the open rows and
 * spans answer
 */
public record AsOf(LocalDate day, Instant knownAt, boolean present) {
}
