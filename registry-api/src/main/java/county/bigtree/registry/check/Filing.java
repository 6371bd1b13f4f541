package county.bigtree.registry.check;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.Reduced;
import org.jspecify.annotations.Nullable;

/**
 * A measurement about to be recorded, as the checks see it.
 *
 * @param tree that was measured, on the books within the change
 * @param filedBy who files it
 * @param measuredOn the measuring day, or the last on which it can have been
 * @param readings as entered
 * @param reduced what they come to
 * @param checks whether a verifier brings it to check another: one that lacks a figure
 * then counts for nothing
 * @param remarks of the measurers
 * @param confirmed codes of the checks whose questions are answered
 */
public record Filing(UUID tree, UUID filedBy, LocalDate measuredOn, Readings readings, Reduced reduced, boolean checks,
		@Nullable String remarks, Collection<String> confirmed) {

	private static final Pattern LEANS = Pattern.compile("\\blean(s|ed|ing)?\\b", Pattern.CASE_INSENSITIVE);

	public Filing {
		confirmed = List.copyOf(confirmed);
	}

	/** Whether the measurers call the tree leaning. */
	boolean leans() {
		HeightReading height = this.readings.height();
		return Stream.of(says(this.remarks), says((height != null) ? height.notes().remarks() : null))
			.anyMatch((words) -> LEANS.matcher(words).find());
	}

	private static String says(@Nullable String words) {
		return (words != null) ? words : "";
	}

}
