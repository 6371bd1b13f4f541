package county.bigtree.registry.openness;

import java.util.List;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.lookup.ReadPlaces.Place;
import county.bigtree.registry.lookup.ReadScores;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.species.Species;
import org.jspecify.annotations.Nullable;

/**
 * A listed tree with all that the public may know of it today.
 *
 * @param place null where only the county is shown
 * @param scores its history, newest measuring day first, withdrawn scores among them
 */
public record OpenTree(TreeSummary tree, Species species, @Nullable Place place, List<ReadScores.ScoreOfDay> scores) {

	/** The score that it has; null while it has none. */
	public ReadScores.@Nullable ScoreOfDay present() {
		TreeSummary.Standing standing = this.tree.score();
		if (standing == null) {
			return null;
		}
		return this.scores.stream()
			.filter((score) -> score.measurement().equals(standing.measurement()) && score.withdrawnAt() == null)
			.findFirst()
			.orElse(null);
	}

	/** How much of its place is shown. */
	Disclosure shown() {
		if (this.place == null) {
			return Disclosure.COUNTY;
		}
		return this.place.exact() ? Disclosure.EXACT : Disclosure.NEARBY;
	}

}
