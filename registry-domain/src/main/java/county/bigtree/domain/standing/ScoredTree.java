package county.bigtree.domain.standing;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.UUID;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.points.Score;
import org.jspecify.annotations.Nullable;

/**
 * A tree's score on some day with what decides whether it may hold a title.
 *
 * @param tree the tree
 * @param measurement the counting measurement from which the score comes
 * @param score points and their standard uncertainty
 * @param measuredOn the measuring day
 * @param seenOn the last day on which the tree was seen standing, never before the
 * measuring day
 * @param lostOn the day on which part of it was lost after it was measured, or null
 * @param carriedOver whether the figures were imported on the word of an older record
 * @param from the earlier measurements whose figures stand in for those that it lacks
 * @param methods by which its figures were taken, those that stand in too
 */
public record ScoredTree(UUID tree, UUID measurement, Score score, LocalDate measuredOn, LocalDate seenOn,
		@Nullable LocalDate lostOn, boolean carriedOver, CarriedFrom from, FigureMethods methods) {

	/**
	 * Most points first; equal points in the order of the trees' ids, which only makes
	 * lists repeatable: equal points share a rank.
	 */
	public static final Comparator<ScoredTree> RANKING = Comparator
		.comparing((ScoredTree scored) -> scored.score().points(), Comparator.reverseOrder())
		.thenComparing((ScoredTree scored) -> scored.tree().toString());

	/**
	 * A score whose figures are all of one visit, taken by methods that nobody told.
	 */
	public ScoredTree(UUID tree, UUID measurement, Score score, LocalDate measuredOn, LocalDate seenOn,
			@Nullable LocalDate lostOn, boolean carriedOver) {
		this(tree, measurement, score, measuredOn, seenOn, lostOn, carriedOver, CarriedFrom.NOTHING,
				FigureMethods.UNTOLD);
	}

	public ScoredTree {
		if (seenOn.isBefore(measuredOn)) {
			throw new IllegalArgumentException(
					"seenOn must not be before measuredOn " + measuredOn + ", was " + seenOn);
		}
		if (lostOn != null && !lostOn.isAfter(measuredOn)) {
			throw new IllegalArgumentException("lostOn must be after measuredOn " + measuredOn + ", was " + lostOn);
		}
	}

}
