package county.bigtree.registry.desk.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.desk.ListDuplicates;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.ReadStandings;
import county.bigtree.registry.tree.TreeDirectory;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Entries that are likely one tree.
 */
@RestController
@Tag(name = "Desk", description = "What a county's coordinator has to see to.")
class DuplicatesController {

	/** No tree has it. */
	private static final UUID NONE = new UUID(0, 0);

	private final ListDuplicates duplicates;

	private final TreeDirectory trees;

	private final ReadStandings counties;

	DuplicatesController(ListDuplicates duplicates, TreeDirectory trees, ReadStandings counties) {
		this.duplicates = duplicates;
		this.trees = trees;
		this.counties = counties;
	}

	@GetMapping("/api/v1/counties/{county}/likely-duplicates")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listLikelyDuplicates",
			summary = "Pairs of entries that are likely one tree, by their exact places: of the county, at most 500, or of one tree")
	Page<LikelyDuplicateJson> list(@PathVariable String county, @RequestParam(required = false) @Nullable String tree) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		UUID of = (tree != null) ? this.trees.find(tree).map(TreeDirectory.KnownTree::id).orElse(NONE) : null;
		return Page.whole(this.duplicates.of(county, of).stream().map(LikelyDuplicateJson::from).toList());
	}

	/**
	 * Two entries that are likely one tree.
	 *
	 * @param metres how far apart their places are
	 * @param jointAccuracyMetres how far they may be apart and still be one
	 */
	record LikelyDuplicateJson(String species, BigDecimal metres, BigDecimal jointAccuracyMetres, EntryJson first,
			EntryJson second) {

		static LikelyDuplicateJson from(ListDuplicates.Pair pair) {
			return new LikelyDuplicateJson(pair.species(), rounded(pair.metres()), rounded(pair.jointAccuracyMetres()),
					EntryJson.from(pair.first()), EntryJson.from(pair.second()));
		}

		private static BigDecimal rounded(double value) {
			return BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP);
		}

		/**
		 * One of two.
		 *
		 * @param waiting whether its nomination is not decided yet
		 * @param girthInches the latest that counts, or as filed
		 */
		record EntryJson(UUID tree, String tag, boolean waiting, @Nullable BigDecimal girthInches) {

			static EntryJson from(ListDuplicates.Entry entry) {
				Double girth = entry.girthInches();
				return new EntryJson(entry.tree(), entry.tag(), entry.waiting(),
						(girth != null) ? rounded(girth) : null);
			}

		}

	}

}
