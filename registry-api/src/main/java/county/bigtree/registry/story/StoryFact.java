package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
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
	 * The same with the trees called so, and whoever had a part in it called by whom.
	 */
	StoryFact named(@Nullable String called, @Nullable String otherCalled, String byWhom) {
		String another = byWhom.toLowerCase(Locale.ROOT);
		return new StoryFact(this.kind, this.recordedAt, this.county, this.tree, called, this.other, otherCalled,
				this.measurement, this.effectiveOn, this.measured, tellsAnother() ? another : this.detail,
				tellsWhose() ? another : this.earlier, this.points, byWhom, this.reason, this.trees);
	}

	/** Whether the detail is another person's name. */
	private boolean tellsAnother() {
		return switch (this.kind) {
			case NOMINATION_ASSIGN, NOMINATION_REASSIGN, NOMINATION_HAND_BACK, NOMINATION_RETURN, NOMINATION_ANSWER,
					NOMINATION_LAPSE, NOMINATION_DECLINE, NOMINATION_WITHDRAW, NOMINATION_REOPEN, MEASUREMENT_ASSIGN,
					MEASUREMENT_REASSIGN, MEASUREMENT_HAND_BACK, MEASUREMENT_WITHDRAW, MEASUREMENT_REOPEN, TITLE_WAITS,
					TITLE_ASSENTED ->
				this.detail != null;
			default -> false;
		};
	}

	/** Whether what was before is another person's name. */
	private boolean tellsWhose() {
		return this.kind == FactKind.REVOKED;
	}

	/**
	 * The same without what leads to the tree, or to the other, and then without anybody.
	 */
	StoryFact without(boolean theTree, boolean theOther) {
		return (!theTree && !theOther) ? this
				: new StoryFact(this.kind, this.recordedAt, this.county, theTree ? null : this.tree,
						theTree ? null : this.tag, theOther ? null : this.other, theOther ? null : this.otherTag,
						theTree ? null : this.measurement, this.effectiveOn, this.measured,
						tellsAnother() ? null : this.detail, tellsWhose() ? null : this.earlier, this.points, null,
						null, this.trees);
	}

	/**
	 * The same fact told of so many trees at once.
	 */
	StoryFact of(int count) {
		return new StoryFact(this.kind, this.recordedAt, this.county, null, null, null, null, null, null, null,
				this.detail, null, null, this.by, null, count);
	}

}
