package county.bigtree.registry.pages;

import java.time.ZoneId;
import java.util.List;
import java.util.Locale;

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
		return new Found(counties, this.species.search(query, null, 0, FOUND),
				this.trees.list(null, null, query, "", FOUND));
	}

	/**
	 * What a search found.
	 */
	record Found(List<ReadCounties.County> counties, List<Species> species, List<TreeSummary> trees) {

		public boolean nothing() {
			return this.counties.isEmpty() && this.species.isEmpty() && this.trees.isEmpty();
		}

	}

}
