package county.bigtree.registry.pages;

import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.lookup.ReadTrees;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Where visitors begin: the counties, a search, the newest changes of title.
 */
@Controller
@Hidden
class HomePage {

	private static final int MOST_COUNTIES = 500;

	private static final int FOUND = 12;

	private static final int NEWS = 8;

	private final ReadCounties counties;

	private final SpeciesCatalogue species;

	private final ReadTrees trees;

	private final TitleNews news;

	HomePage(ReadCounties counties, SpeciesCatalogue species, ReadTrees trees, TitleNews news) {
		this.counties = counties;
		this.species = species;
		this.trees = trees;
		this.news = news;
	}

	@GetMapping("/")
	@Access(Who.ANYONE)
	String home(@RequestParam(required = false) @Nullable String query, @ModelAttribute("units") Units units,
			Model model) {
		List<ReadCounties.County> all = this.counties.list("", MOST_COUNTIES);
		model.addAttribute("counties", all);
		model.addAttribute("feed", "/titles.atom");
		model.addAttribute("words", new Words(ZoneId.of("UTC"), units));
		if (query != null && !query.isBlank()) {
			model.addAttribute("query", query.strip());
			model.addAttribute("found", find(query.strip(), all));
		}
		else {
			model.addAttribute("changes", this.news.latest(null, NEWS));
		}
		return "home";
	}

	private Found find(String query, List<ReadCounties.County> all) {
		String part = query.toLowerCase(Locale.ROOT);
		List<ReadCounties.County> counties = all.stream()
			.filter((county) -> county.name().toLowerCase(Locale.ROOT).contains(part))
			.limit(FOUND)
			.toList();
		List<Species> species = this.species.search(query, null, 0, FOUND + 1);
		List<TreeSummary> trees = this.trees.list(null, null, query, "", FOUND + 1);
		Map<String, String> names = this.species
			.all(trees.stream().map(TreeSummary::species).collect(Collectors.toSet()))
			.values()
			.stream()
			.collect(Collectors.toMap(Species::key, Species::commonName));
		return new Found(counties, first(species), first(trees), names, Math.max(species.size(), trees.size()) > FOUND);
	}

	private static <T> List<T> first(List<T> all) {
		return all.subList(0, Math.min(all.size(), FOUND));
	}

	/**
	 * What a search found.
	 *
	 * @param names of the trees' species, by key
	 * @param more whether more species or trees fit
	 */
	record Found(List<ReadCounties.County> counties, List<Species> species, List<TreeSummary> trees,
			Map<String, String> names, boolean more) {

		public boolean nothing() {
			return this.counties.isEmpty() && this.species.isEmpty() && this.trees.isEmpty();
		}

	}

}
