package county.bigtree.registry.visit;

import java.time.LocalDate;
import java.util.UUID;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * What came of a visit, as it is told.
 *
 * @param outcome measured, seen, not-found, refused, no-answer, unsafe or not-reached
 * @param visitedOn the day
 * @param measurement the measurement that came of it, filed before
 * @param conditionReport the condition report that came of it, filed before; without one
 * a tree that was seen is reported upright, and one that was not found, not found
 */
public record OutcomeBody(@NotNull String outcome, @NotNull LocalDate visitedOn,
		@Nullable @Size(max = 2000) String remarks, @Nullable UUID measurement, @Nullable UUID conditionReport) {
}
