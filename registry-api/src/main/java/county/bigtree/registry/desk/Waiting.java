package county.bigtree.registry.desk;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Comparator;
import java.util.UUID;

import county.bigtree.domain.standing.Title;
import org.jspecify.annotations.Nullable;

/**
 * Something that waits for a county's decision.
 *
 * @param kind nomination, measurement, condition-report, relocation for a proposal that a
 * tree stands in another county, or not-found for a tree that was looked for in vain
 * twice
 * @param id of the nomination, measurement, report or proposal; of the second report on a
 * tree that was not found
 * @param tree the tree; where it is merged into another, that one
 * @param status of the nomination or measurement; the condition that was reported
 * @param since when it was filed
 * @param points those of the measurement that waits, or null where none does
 * @param wouldHold the title that the tree would hold if that measurement counted, or
 * null
 * @param title what the tree holds now, or null
 */
public record Waiting(String kind, UUID id, UUID tree, String tag, String species, String status, Instant since,
		@Nullable BigDecimal points, @Nullable Title wouldHold, @Nullable Title title) {

	/**
	 * What bears on a title first, then what has waited longest.
	 */
	public static final Comparator<Waiting> ORDER = Comparator.comparing(Waiting::bearsOnTitle)
		.reversed()
		.thenComparing(Waiting::since)
		.thenComparing((one) -> one.id().toString());

	/**
	 * Whether a title may change hands by the decision.
	 */
	public boolean bearsOnTitle() {
		return this.wouldHold != null || this.title != null;
	}

}
