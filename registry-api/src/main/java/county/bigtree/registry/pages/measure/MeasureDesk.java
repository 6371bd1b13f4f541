package county.bigtree.registry.pages.measure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.points.Score;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.species.NameMatch;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.standing.ComparePoints;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
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
	String measure(@RequestParam Map<String, String> parameters, Model model) {
		Map<String, TypedReading> figures = new LinkedHashMap<>();
		figures.put("girth", TypedReading.of(Kind.GIRTH, "girth", parameters));
		figures.put("height", TypedReading.of(Kind.HEIGHT, "height", parameters));
		figures.put("crown", TypedReading.of(Kind.CROWN, "crown", parameters));
		model.addAttribute("figures", figures);
		model.addAttribute("forms", Map.of("girth", MethodForm.of(Kind.GIRTH), "height", MethodForm.of(Kind.HEIGHT),
				"crown", MethodForm.of(Kind.CROWN)));
		model.addAttribute("counties", this.counties.list("", MOST_COUNTIES));
		model.addAttribute("chosenCounty", parameters.getOrDefault("county", ""));
		model.addAttribute("chosenSpecies", parameters.getOrDefault("species", ""));
		Readings readings = readings(figures);
		if (readings != null) {
			model.addAttribute("working", readings.working());
			model.addAttribute("cautions", readings.cautions());
			readings.reduce().score().ifPresent((score) -> addComparison(score, figures, parameters, model));
		}
		return "measure";
	}

	/** All readings that come to a figure; null where none does. */
	private static @Nullable Readings readings(Map<String, TypedReading> figures) {
		Reading girth = reading(figures, "girth");
		Reading height = reading(figures, "height");
		Reading crown = reading(figures, "crown");
		return (girth == null && height == null && crown == null) ? null
				: new Readings((GirthReading) girth, (HeightReading) height, (CrownReading) crown);
	}

	private static @Nullable Reading reading(Map<String, TypedReading> figures, String figure) {
		return Objects.requireNonNull(figures.get(figure)).reading();
	}

	private static FigureMethods methods(Map<String, TypedReading> figures) {
		return new FigureMethods(method(figures, "girth"), method(figures, "height"), method(figures, "crown"));
	}

	private static Method method(Map<String, TypedReading> figures, String figure) {
		return Objects.requireNonNull(figures.get(figure)).form().method();
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

	private void addComparison(Score score, Map<String, TypedReading> figures, Map<String, String> parameters,
			Model model) {
		model.addAttribute("score", score);
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
			model.addAttribute("compared", this.compare.compare(county, named.get(0).key(), score, methods(figures)));
		}
	}

}
