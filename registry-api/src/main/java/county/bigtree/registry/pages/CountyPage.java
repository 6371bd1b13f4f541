package county.bigtree.registry.pages;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.standing.Lead;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.ReadLeaders;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * A county's standings: every species with its leader.
 */
@Controller
@Hidden
class CountyPage {

	private static final int NEWS = 5;

	private final CountyOfPage counties;

	private final ReadLeaders leaders;

	private final SpeciesCatalogue species;

	private final TitleNews news;

	CountyPage(CountyOfPage counties, ReadLeaders leaders, SpeciesCatalogue species, TitleNews news) {
		this.counties = counties;
		this.leaders = leaders;
		this.species = species;
		this.news = news;
	}

	@GetMapping("/counties/{county}")
	@Access(Who.ANYONE)
	String county(@PathVariable String county, @RequestParam(defaultValue = "all") String show,
			@RequestParam(required = false) @Nullable String name, @ModelAttribute("units") Units units, Model model) {
		ReadCounties.County found = this.counties.get(county);
		model.addAttribute("county", found);
		model.addAttribute("words", CountyOfPage.words(found, units));
		model.addAttribute("show", show);
		model.addAttribute("name", name);
		model.addAttribute("lines", lines(county, show, name));
		model.addAttribute("changes", this.news.latest(county, NEWS));
		return "county";
	}

	private List<Line> lines(String county, String show, @Nullable String name) {
		List<ReadLeaders.Leader> found = this.leaders.of(county);
		Map<String, Species> known = this.species.all(found.stream().map(ReadLeaders.Leader::species).toList());
		return found.stream()
			.map((leader) -> new Line(Objects.requireNonNull(known.get(leader.species())), leader))
			.filter((line) -> line.shown(show))
			.filter((line) -> name == null || line.named(name.strip().toLowerCase(Locale.ROOT)))
			.sorted(Comparator.comparing((Line line) -> line.species().commonName(), String.CASE_INSENSITIVE_ORDER)
				.thenComparing((line) -> line.species().key()))
			.toList();
	}

	/**
	 * A species of the county.
	 */
	record Line(Species species, ReadLeaders.Leader leader) {

		private boolean shown(String show) {
			return switch (show) {
				case "shared" -> this.leader.holders() > 1;
				case "close" -> tooClose(this.leader.lead());
				case "vacant" -> this.leader.holders() == 0;
				default -> true;
			};
		}

		private static boolean tooClose(@Nullable Lead lead) {
			return lead != null && Comparison.Clarity.of(lead.probability()) == Comparison.Clarity.TOO_CLOSE;
		}

		private boolean named(String part) {
			return this.species.commonName().toLowerCase(Locale.ROOT).contains(part)
					|| this.species.scientificName().toLowerCase(Locale.ROOT).contains(part);
		}

	}

}
