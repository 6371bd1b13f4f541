package county.bigtree.registry.desk;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.UUID;

import county.bigtree.domain.standing.Title;
import org.jspecify.annotations.Nullable;

/**
 * Something that waits for a county's decision.
 *
 * @param kind nomination, measurement, condition-report, relocation for a proposal that a
 * tree stands in another county, sign-off for one that would change who holds a title,
 * not-found for a tree that was looked for in vain twice, photo, or letter
 * @param id of the nomination, measurement, report, proposal, sign-off, photo or letter;
 * of the second report on a tree that was not found
 * @param tree the tree; where it is merged into another, that one; null for a letter that
 * is about none
 * @param status of the nomination or measurement; the condition that was reported; the
 * verdict of a sign-off; what a photo shows; what a letter is about
 * @param since when it was filed
 * @param points those of the measurement that waits, or null where none does
 * @param wouldHold the title that the tree would hold if that measurement counted, or
 * null
 * @param largestProbability how likely it is that its tree is truly larger than the
 * largest other one of the ranking, by that measurement; null where there is none to
 * compare
 * @param title what the tree holds now, or null
 * @param extraordinary whether a check found a figure beyond what is known of the species
 * @param lapsesOn the day on which a returned nomination lapses unanswered, once its
 * nominator has been reminded, or null
 */
public record Waiting(String kind, UUID id, @Nullable UUID tree, @Nullable String tag, @Nullable String species,
		String status, Instant since, @Nullable BigDecimal points, @Nullable Title wouldHold,
		@Nullable Double largestProbability, @Nullable Title title, boolean extraordinary,
		@Nullable LocalDate lapsesOn) {

	/**
	 * The extraordinary first, then what bears on a title, then what has waited longest.
	 */
	public static final Comparator<Waiting> ORDER = Comparator.comparingInt(Waiting::turn)
		.thenComparing(Waiting::since)
		.thenComparing((one) -> one.id().toString());

	/**
	 * Whose turn it is, from 0.
	 */
	public int turn() {
		if (this.extraordinary) {
			return 0;
		}
		return bearsOnTitle() ? 1 : 2;
	}

	/**
	 * Whether a title may change hands by the decision.
	 */
	public boolean bearsOnTitle() {
		return this.wouldHold != null || this.title != null;
	}

}
