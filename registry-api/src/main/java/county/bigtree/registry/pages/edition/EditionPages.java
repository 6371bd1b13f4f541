package county.bigtree.registry.pages.edition;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.desk.DeskWords;
import county.bigtree.registry.pages.desk.Desks;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Plain;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Editions for everybody: the list of them, one of them, and what is new in it.
 */
@Controller
@Hidden
class EditionPages {

	private static final String EDITION = "edition";

	private final Desks desks;

	EditionPages(Desks desks) {
		this.desks = desks;
	}

	@GetMapping("/counties/{county}/editions")
	@Access(Who.ANYONE)
	String list(@PathVariable String county, Api api, @ModelAttribute("units") Units units, Model model) {
		this.desks.open(county, units, model);
		model.addAttribute("editions", Plain.list(api.get("/counties/{county}/editions", county)));
		return "editions";
	}

	/**
	 * An edition: its species, or the ranking of one of them. Before it is published, its
	 * days.
	 */
	@GetMapping("/editions/{edition}")
	@Access(Who.ANYONE)
	String edition(@PathVariable String edition, @RequestParam(required = false) @Nullable String species, Api api,
			@ModelAttribute("units") Units units, Model model) {
		JsonNode found = open(edition, api, units, model);
		model.addAttribute("errata", Plain.list(api.get("/editions/{edition}/errata", edition)));
		if (!found.hasNonNull("publication")) {
			return EDITION;
		}
		JsonNode list = api.get("/editions/{edition}/list", edition);
		model.addAttribute("asPublished", list.path("asPublished").asBoolean());
		model.addAttribute("list", Plain.map(list.path("list")));
		model.addAttribute("rankings", rankings(list.path("list").path("species")));
		if (species != null) {
			model.addAttribute("ranking", ranking(list, species));
		}
		return EDITION;
	}

	@GetMapping("/editions/{edition}/changes")
	@Access(Who.ANYONE)
	String changes(@PathVariable String edition, Api api, @ModelAttribute("units") Units units, Model model) {
		open(edition, api, units, model);
		model.addAttribute("changes", Plain.map(api.get("/editions/{edition}/changes", edition)));
		return "edition-changes";
	}

	private JsonNode open(String edition, Api api, Units units, Model model) {
		JsonNode found = api.get("/editions/{edition}", edition);
		DeskWords words = this.desks.open(found.path("county").asString(""), units, model);
		model.addAttribute(EDITION, Plain.map(found));
		model.addAttribute("closed", words.today().isAfter(LocalDate.parse(found.path("closesOn").asString())));
		return found;
	}

	/** Of each species who held its titles, or else who led. */
	private static List<Map<String, @Nullable Object>> rankings(JsonNode species) {
		List<Map<String, @Nullable Object>> rankings = new ArrayList<>();
		species.forEach((one) -> {
			List<Map<String, @Nullable Object>> trees = Plain.list(one.path("trees"));
			List<Map<String, @Nullable Object>> holders = holders(trees);
			Map<String, @Nullable Object> ranking = told(one, holders);
			ranking.put("first", holders.isEmpty() ? trees.subList(0, 1) : holders);
			rankings.add(ranking);
		});
		return rankings;
	}

	private static List<Map<String, @Nullable Object>> holders(List<Map<String, @Nullable Object>> trees) {
		return trees.stream().filter((tree) -> tree.get("title") != null).toList();
	}

	/** Where several share the title, each is called co-champion. */
	private static Map<String, @Nullable Object> told(JsonNode species, List<Map<String, @Nullable Object>> holders) {
		Map<String, @Nullable Object> told = Plain.map(species);
		told.put("called", (holders.size() > 1) ? "co-champion" : "champion");
		return told;
	}

	private static Map<String, @Nullable Object> ranking(JsonNode list, String species) {
		for (JsonNode one : list.path("list").path("species")) {
			if (one.path("species").asString("").equals(species)) {
				return told(one, holders(Plain.list(one.path("trees"))));
			}
		}
		throw Problem.notFound("This edition lists no such species.");
	}

}
