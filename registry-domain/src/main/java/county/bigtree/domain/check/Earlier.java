package county.bigtree.domain.check;

import java.time.LocalDate;

/**
 * A visit to the same tree before.
 *
 * @param sizes what was measured then
 * @param measuredOn its day
 */
public record Earlier(Sizes sizes, LocalDate measuredOn) {
}
