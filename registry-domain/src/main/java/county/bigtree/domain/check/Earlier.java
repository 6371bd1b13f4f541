package county.bigtree.domain.check;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * A visit to the same tree before.
 *
 * @param sizes what was measured then
 * @param measuredOn its day
 * @param heightOn the day of the height that counts at present, of this visit or one
 * before; null for none, or if the tree has lost a part since
 * @param crownOn the same of the crown spread
 */
public record Earlier(Sizes sizes, LocalDate measuredOn, @Nullable LocalDate heightOn, @Nullable LocalDate crownOn) {
}
