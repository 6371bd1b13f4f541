package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A fact as it is told.
 *
 * @param kind what happened
 * @param recordedAt when the register learned of it
 * @param county under whose journal it was recorded
 * @param tree the tree concerned, or null for what concerns all trees
 * @param tag its tag
 * @param other the other tree of a merge or split
 * @param otherTag its tag
 * @param measurement the measurement concerned
 * @param effectiveOn the day from which it holds, where that is not the day of recording
 * @param measured the measuring day as exactly as it is known
 * @param detail the verdict, condition, species, county, form or older record, by kind
 * @param earlier what the detail was before; whose sign-off was revoked; or that a
 * sign-off brought figures of the verifier's own
 * @param points what the measurement makes
 * @param by the name under which the person is credited who recorded it
 * @param reason why, in that person's words; null where the asker may not see them
 * @param trees how many trees it tells of together
 */
public record StoryFact(FactKind kind, Instant recordedAt, String county, @Nullable UUID tree, @Nullable String tag,
		@Nullable UUID other, @Nullable String otherTag, @Nullable UUID measurement, @Nullable LocalDate effectiveOn,
		@Nullable String measured, @Nullable String detail, @Nullable String earlier, @Nullable BigDecimal points,
		@Nullable String by, @Nullable String reason, int trees) {

	/**
	 * The same fact told of so many trees at once.
	 */
	StoryFact of(int count) {
		return new StoryFact(this.kind, this.recordedAt, this.county, null, null, null, null, null, null, null,
				this.detail, null, null, this.by, null, count);
	}

}
