package county.bigtree.registry.edition;

import java.time.LocalDate;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;

/**
 * The announcement of an edition.
 *
 * @param name by which people know it, such as {@code 2026}; one of its kind in the
 * county
 * @param filingsBy the last day, in the county's time zone, by which filings are in time
 * @param graceDays how many days later a filing may still arrive whose figures were taken
 * by that day: it comes out of the woods late
 * @param closesOn the day of the list: its standings are those of the end of this day
 */
public record EditionBody(@NotNull @Size(min = 1, max = 60) @Pattern(regexp = "\\S(.*\\S)?") String name,
		@NotNull LocalDate filingsBy, @Min(0) @Max(60) int graceDays, @NotNull LocalDate closesOn) {

	/** The last day on which a filing may arrive. */
	LocalDate graceEnds() {
		return this.filingsBy.plusDays(this.graceDays);
	}

}
