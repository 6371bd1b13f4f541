package county.bigtree.registry.condition;

import java.time.LocalDate;

import county.bigtree.registry.problem.Problem;
import jakarta.validation.constraints.NotNull;
import org.jspecify.annotations.Nullable;

/**
 * When a condition began: on a day, or on one not known between two. It holds from the
 * latest.
 *
 * @param earliest null where the day is known
 */
public record Began(@Nullable LocalDate earliest, LocalDate latest) {

	/**
	 * From what a body says.
	 * @throws Problem where it gives both, or the two days in no order
	 */
	public static @Nullable Began of(@Nullable LocalDate day, @Nullable Between between) {
		if (day != null && between != null) {
			throw Problem.invalid("#/between", "contradiction", "must be left out where began is given");
		}
		if (between != null && !between.earliest().isBefore(between.latest())) {
			throw Problem.invalid("#/between/latest", "out-of-range",
					"must be after the earliest, " + between.earliest());
		}
		if (between != null) {
			return new Began(between.earliest(), between.latest());
		}
		return (day != null) ? new Began(null, day) : null;
	}

	/**
	 * The days between which a condition began.
	 *
	 * @param earliest the first day on which it may have begun
	 * @param latest the last
	 */
	public record Between(@NotNull LocalDate earliest, @NotNull LocalDate latest) {
	}

}
