package county.bigtree.registry.pages.filing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.species.SpeciesCatalogue;
import io.swagger.v3.oas.annotations.Hidden;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * What somebody filed and what became of it, newest first; what waits for them on top.
 */
@Controller
@Hidden
class MinePage {

	private static final int SHOWN = 25;

	private static final int NEWS = 10;

	private final SpeciesCatalogue species;

	MinePage(SpeciesCatalogue species) {
		this.species = species;
	}

	@GetMapping("/mine")
	@Access(Who.SIGNED_IN)
	String mine(@RequestParam(defaultValue = "") String cursor, @RequestParam(defaultValue = "") String done,
			@RequestParam(defaultValue = "") String tree, Api api, @ModelAttribute("units") Units units, Actor actor,
			Model model) {
		JsonNode page = cursor.isEmpty() ? api.get("/people/me/filings?limit={limit}", SHOWN)
				: api.get("/people/me/filings?limit={limit}&cursor={cursor}", SHOWN, cursor);
		List<JsonNode> items = StreamSupport.stream(page.path("items").spliterator(), false).toList();
		Map<String, Days> days = new HashMap<>();
		items.forEach((item) -> days.computeIfAbsent(county(item),
				(key) -> Days.of(api.get("/counties/{county}", key), units)));
		model.addAttribute("filings", items);
		JsonNode news = cursor.isEmpty() ? api.get("/people/me/notices?limit={limit}", NEWS).path("items")
				: JsonNodeFactory.instance.arrayNode();
		news.forEach((item) -> days.computeIfAbsent(county(item), (key) -> days(key, api, units)));
		model.addAttribute("news", news);
		model.addAttribute("returned",
				items.stream().filter((item) -> item.path("status").asString("").equals("returned")).toList());
		model.addAttribute("next", page.path("next").asString(null));
		model.addAttribute("daysOf", days);
		model.addAttribute("speciesOf",
				this.species.all(items.stream().map((item) -> item.path("species").asString("")).distinct().toList()));
		model.addAttribute("files", actor.isAnywhere(Role.VOLUNTEER));
		model.addAttribute("person", actor.id());
		model.addAttribute("done", done);
		model.addAttribute("reported", tree);
		return "mine";
	}

	/** What is of no county is told by the days of UTC. */
	private static Days days(String county, Api api, Units units) {
		JsonNode of = county.isEmpty() ? JsonNodeFactory.instance.objectNode().put("timeZone", "UTC")
				: api.get("/counties/{county}", county);
		return Days.of(of, units);
	}

	private static String county(JsonNode item) {
		return item.path("county").asString("");
	}

}
