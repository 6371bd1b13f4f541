package county.bigtree.domain.standing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Predicate;

import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.rulebook.Rulebook;
import org.jspecify.annotations.Nullable;

/**
 * How many points more a tree needs to hold a title, all else being as it is, its
 * uncertainty too. Found by asking {@link Holders} for one number of points after
 * another, so that every tie rule and every rule on stale trees is heeded.
 *
 * @param toLead points that it lacks to be champion, alone or beside others of as many; 0
 * or more
 * @param toShare points that it lacks to be champion or co-champion; 0 or more
 */
public record WhatItTakes(BigDecimal toLead, BigDecimal toShare) {

	/**
	 * What a tree lacks on a day.
	 * @param others the scores of the other trees, at least those of every contender down
	 * to the tie rule's floor
	 * @param tree a current tree that may hold a title
	 */
	public static WhatItTakes of(Collection<ScoredTree> others, ScoredTree tree, Rulebook rulebook, LocalDate day) {
		int own = hundredths(tree.score().points());
		int most = others.stream().mapToInt((other) -> hundredths(other.score().points())).max().orElse(own);
		Predicate<@Nullable Title> leads = (title) -> title == Title.CHAMPION;
		Predicate<@Nullable Title> shares = (title) -> title != null;
		Search search = new Search(others, tree, rulebook, day);
		return new WhatItTakes(BigDecimal.valueOf(search.fewest(own, most, leads) - own, 2),
				BigDecimal.valueOf(search.fewest(own, most, shares) - own, 2));
	}

	private static int hundredths(Points points) {
		return points.toBigDecimal().movePointRight(2).intValueExact();
	}

	private record Search(Collection<ScoredTree> others, ScoredTree tree, Rulebook rulebook, LocalDate day) {

		/** By halves: what holds with some points holds with more. */
		int fewest(int own, int most, Predicate<@Nullable Title> wanted) {
			int low = own;
			int high = Math.max(own, most);
			while (low < high) {
				int middle = low + (high - low) / 2;
				if (wanted.test(titleWith(middle))) {
					high = middle;
				}
				else {
					low = middle + 1;
				}
			}
			return low;
		}

		private @Nullable Title titleWith(int hundredths) {
			Score score = new Score(Points.ofHundredths(hundredths), this.tree.score().standardUncertainty());
			List<ScoredTree> trees = new ArrayList<>(this.others);
			trees.add(new ScoredTree(this.tree.tree(), this.tree.measurement(), score, this.tree.measuredOn(),
					this.tree.seenOn(), this.tree.lostOn(), this.tree.carriedOver(), this.tree.from(),
					this.tree.methods()));
			return Holders.ofAdmitted(trees, this.rulebook, this.day).get(this.tree.tree());
		}

	}

}
