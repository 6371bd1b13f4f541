package county.bigtree.domain.standing;

import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.points.Points;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.rulebook.WhenStale;

/**
 * Who holds the titles of one species in one county on a day.
 *
 * <p>
 * Champions are exactly those with the most points among the trees that may hold a title;
 * co-champions are the others of them within the tie rule of that score. Trees with fewer
 * points than the tie rule's {@link county.bigtree.domain.rulebook.TieRule#floor floor}
 * under the best contender change nothing, so a caller may leave them out.
 */
public final class Holders {

	private Holders() {
	}

	/**
	 * The holders among the trees, in ranking order.
	 * @param species the species' key: one that the rules don't admit has no holders
	 * @param trees the scores of the species' trees on the day, at least those of every
	 * contender down to the tie rule's floor
	 * @param rulebook the rules in force on the day
	 * @param day the day
	 * @return each holder with its title; empty where no tree may hold one
	 */
	public static Map<UUID, Title> of(String species, Collection<ScoredTree> trees, Rulebook rulebook, LocalDate day) {
		return rulebook.admits(species) ? ofAdmitted(trees, rulebook, day) : Map.of();
	}

	/**
	 * The same of a species that the rules admit.
	 */
	static Map<UUID, Title> ofAdmitted(Collection<ScoredTree> trees, Rulebook rulebook, LocalDate day) {
		Contention contention = new Contention(rulebook);
		List<ScoredTree> contenders = trees.stream()
			.filter((tree) -> contention.contends(tree, day))
			.sorted(ScoredTree.RANKING)
			.toList();
		List<ScoredTree> mayHold = mayHold(contenders, rulebook.whenStale(), contention, day);
		Map<UUID, Title> holders = new LinkedHashMap<>();
		if (!mayHold.isEmpty()) {
			share(mayHold, rulebook, holders);
		}
		return holders;
	}

	private static List<ScoredTree> mayHold(List<ScoredTree> contenders, WhenStale whenStale, Contention contention,
			LocalDate day) {
		List<ScoredTree> current = contenders.stream().filter((tree) -> !contention.stale(tree, day)).toList();
		Optional<Points> best = contenders.stream().findFirst().map((tree) -> tree.score().points());
		Optional<Points> bestCurrent = current.stream().findFirst().map((tree) -> tree.score().points());
		return switch (whenStale) {
			case KEEPS -> contenders.stream()
				.filter((tree) -> !contention.stale(tree, day)
						|| bestCurrent.map((points) -> tree.score().points().compareTo(points) >= 0).orElse(true))
				.toList();
			case VACANT -> best.equals(bestCurrent) ? current : List.of();
			case PASSES -> current;
		};
	}

	private static void share(List<ScoredTree> mayHold, Rulebook rulebook, Map<UUID, Title> holders) {
		Points most = mayHold.get(0).score().points();
		List<ScoredTree> champions = mayHold.stream().filter((tree) -> tree.score().points().equals(most)).toList();
		for (ScoredTree tree : mayHold) {
			if (tree.score().points().equals(most)) {
				holders.put(tree.tree(), Title.CHAMPION);
			}
			else if (champions.stream()
				.anyMatch((champion) -> rulebook.tieRule().shares(champion.score(), tree.score()))) {
				holders.put(tree.tree(), Title.CO_CHAMPION);
			}
		}
	}

}
