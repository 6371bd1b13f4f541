package county.bigtree.registry.openness;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

import county.bigtree.registry.lookup.ReadPlaces;
import county.bigtree.registry.lookup.ReadScores;
import county.bigtree.registry.lookup.ReadTrees;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads open trees by pages, each of a few statements whatever its length.
 */
@Service
public class ReadOpenTrees {

	private static final int PAGE = 500;

	/** Of more it is not said how many they are. */
	private static final int COUNTED = 5000;

	private final FindOpenTrees find;

	private final ReadTrees trees;

	private final ReadPlaces places;

	private final ReadScores scores;

	private final SpeciesCatalogue species;

	ReadOpenTrees(FindOpenTrees find, ReadTrees trees, ReadPlaces places, ReadScores scores, SpeciesCatalogue species) {
		this.find = find;
		this.trees = trees;
		this.places = places;
		this.scores = scores;
		this.species = species;
	}

	/**
	 * The first page of those asked for, which counts them.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public Page first(TreeFilter filter, int limit) {
		List<FindOpenTrees.Found> found = this.find.find(filter, "", Math.max(COUNTED, limit) + 1);
		return page(found, limit, (found.size() <= COUNTED) ? found.size() : null);
	}

	/**
	 * The page after a tag.
	 * @param matched what the first page counted
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public Page next(TreeFilter filter, String after, @Nullable Integer matched, int limit) {
		return page(this.find.find(filter, after, limit + 1), limit, matched);
	}

	/**
	 * The tree with this id.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public Optional<OpenTree> find(UUID tree) {
		return this.trees.find(tree.toString(), null).flatMap((found) -> {
			TreeFilter filter = new TreeFilter(found.county(), null, found.tag(), null, null, null, Interval.ALL);
			return first(filter, 1).trees().stream().findFirst();
		});
	}

	/**
	 * Hands on all trees of a county, by pages. Call it in a transaction of one snapshot.
	 */
	void each(String county, Consumer<List<OpenTree>> taker) {
		TreeFilter filter = TreeFilter.of(county);
		Page page = next(filter, "", null, PAGE);
		taker.accept(page.trees());
		while (page.next() != null) {
			page = next(filter, page.next(), null, PAGE);
			taker.accept(page.trees());
		}
	}

	private Page page(List<FindOpenTrees.Found> found, int limit, @Nullable Integer matched) {
		List<FindOpenTrees.Found> shown = found.subList(0, Math.min(found.size(), limit));
		List<UUID> ids = shown.stream().map(FindOpenTrees.Found::tree).toList();
		return new Page(trees(ids), matched, (found.size() > limit) ? shown.get(limit - 1).tag() : null);
	}

	private List<OpenTree> trees(List<UUID> ids) {
		List<TreeSummary> summaries = this.trees.of(ids);
		Map<UUID, ReadPlaces.Place> shown = this.places.of(ids);
		Map<UUID, List<ReadScores.ScoreOfDay>> histories = this.scores.of(ids);
		Map<String, Species> kinds = this.species.all(summaries.stream().map(TreeSummary::species).toList());
		List<OpenTree> trees = new ArrayList<>();
		for (TreeSummary tree : summaries) {
			trees.add(new OpenTree(tree, Objects.requireNonNull(kinds.get(tree.species())), shown.get(tree.id()),
					histories.getOrDefault(tree.id(), List.of())));
		}
		return trees;
	}

	/**
	 * A page of trees.
	 *
	 * @param matched how many there are on all pages; null where they are too many to
	 * count
	 * @param next the tag after which the next page begins; null where none follows
	 */
	public record Page(List<OpenTree> trees, @Nullable Integer matched, @Nullable String next) {
	}

}
