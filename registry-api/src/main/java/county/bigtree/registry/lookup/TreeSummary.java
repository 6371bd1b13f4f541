package county.bigtree.registry.lookup;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;

/**
 * A tree as the public may see it.
 *
 * @param popularName what people call it, or null
 * @param revision raised by facts of the tree itself
 * @param shown its position as shown, if it is
 * @param condition the latest condition confirmed, upright if none was
 * @param lastSeenOn the last day on which it was seen standing, if it is ranked
 * @param score its present score, or null while it has none
 * @param title the title it holds, or null
 * @param eligible whether it may be ranked
 * @param accepted whether it is on the books
 * @param kept the tree into which it is merged; itself where it is not
 * @param listed whether it is public; else only its people see it
 * @param foundBy the name by which its finder is credited, if one is
 */
public record TreeSummary(UUID id, String tag, @Nullable String fileTag, @Nullable String popularName, String county,
		String species, long revision, Optional<Position> shown, String condition, @Nullable LocalDate lastSeenOn,
		@Nullable Standing score, @Nullable String title, @Nullable Instant titleSince, boolean eligible,
		boolean accepted, UUID kept, boolean listed, @Nullable String foundBy) {

	/**
	 * Whether it was found to be another tree on the books.
	 */
	public boolean merged() {
		return !this.kept.equals(this.id);
	}

	/**
	 * The present score and its rank.
	 *
	 * @param measured the measuring day as exactly as it is known
	 */
	public record Standing(UUID measurement, BigDecimal points, BigDecimal pointsStandardUncertainty,
			LocalDate measuredOn, KnownDay measured, int rank, boolean damaged, boolean carriedOver) {
	}

}
