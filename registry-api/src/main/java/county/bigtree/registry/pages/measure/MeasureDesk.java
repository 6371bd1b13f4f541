package county.bigtree.registry.pages.measure;

import java.util.List;
import java.util.Map;

import county.bigtree.domain.points.Score;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.species.NameMatch;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.standing.ComparePoints;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The measuring desk: how was it measured, what was read, what that comes to and how it
 * compares. An address holds the whole, so that it can be shared; nothing is kept.
 */
@Controller
@Hidden
class MeasureDesk {

	private static final int MOST_COUNTIES = 500;

	private static final int SPECIES_OFFERED = 8;

	private final ReadCounties counties;

	private final SpeciesCatalogue species;

	private final ComparePoints compare;

	private final CatchUp catchUp;

	MeasureDesk(ReadCounties counties, SpeciesCatalogue species, ComparePoints compare, CatchUp catchUp) {
		this.counties = counties;
		this.species = species;
		this.compare = compare;
		this.catchUp = catchUp;
	}

	@GetMapping("/measure")
	@Access(Who.ANYONE)
	String measure(@RequestParam Map<String, String> parameters, @ModelAttribute("units") Units units, Model model) {
		TypedFigures figures = TypedFigures.of(parameters, units);
		figures.show(model);
		model.addAttribute("counties", this.counties.list("", MOST_COUNTIES));
		model.addAttribute("chosenCounty", parameters.getOrDefault("county", ""));
		model.addAttribute("chosenSpecies", parameters.getOrDefault("species", ""));
		figures.score().ifPresent((score) -> addComparison(score, figures, parameters, model));
		return "measure";
	}

	/**
	 * The species of that key or name; those that it may stand for, where it isn't clear.
	 */
	private List<Species> named(String name) {
		return this.species.find(name)
			.map(List::of)
			.orElseGet(() -> (this.species.match(name) instanceof NameMatch.Matched matched)
					? List.of(matched.species()) : this.species.search(name, null, 0, SPECIES_OFFERED));
	}

	private void addComparison(Score score, TypedFigures figures, Map<String, String> parameters, Model model) {
		String county = parameters.getOrDefault("county", "");
		String name = parameters.getOrDefault("species", "").strip();
		if (name.isEmpty()) {
			return;
		}
		List<Species> named = named(name);
		model.addAttribute("named", named);
		ReadCounties.County found = this.counties.find(county).filter((one) -> !one.practice()).orElse(null);
		if (found != null && named.size() == 1) {
			this.catchUp.county(county);
			model.addAttribute("county", found);
			model.addAttribute("species", named.get(0));
			model.addAttribute("compared", this.compare.compare(county, named.get(0).key(), score, figures.methods()));
		}
	}

}
