package county.bigtree.domain.standing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.rulebook.Rulebook;

/**
 * By how much a current tree leads the next current tree down the list, and how likely it
 * is that the order is right.
 *
 * @param points the margin, 0 or more
 * @param standardUncertainty its standard uncertainty in points
 * @param probability the probability that the order is right: 0.5 for equal points
 * @param next the tree that is led
 */
public record Lead(BigDecimal points, double standardUncertainty, double probability, UUID next) {

	/**
	 * The leads of all current trees of a list but its last current one.
	 * @param ranked trees in ranking order
	 */
	public static Map<UUID, Lead> in(List<ScoredTree> ranked, Rulebook rulebook, LocalDate day) {
		Contention contention = new Contention(rulebook);
		List<ScoredTree> current = ranked.stream().filter((tree) -> !contention.stale(tree, day)).toList();
		Map<UUID, Lead> leads = new HashMap<>();
		for (int index = 0; index + 1 < current.size(); index++) {
			leads.put(current.get(index).tree(), over(current.get(index), current.get(index + 1)));
		}
		return leads;
	}

	/** How clear the order of the two is. */
	public Comparison.Clarity clarity() {
		return Comparison.Clarity.of(this.probability);
	}

	private static Lead over(ScoredTree tree, ScoredTree next) {
		Comparison comparison = Comparison.of(tree.score(), next.score());
		return new Lead(comparison.margin(), comparison.standardUncertainty(), comparison.probability(), next.tree());
	}

}
