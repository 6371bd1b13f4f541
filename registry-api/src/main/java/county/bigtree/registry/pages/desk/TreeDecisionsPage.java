package county.bigtree.registry.pages.desk;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Plain;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * What a coordinator can decide on a tree, each with what it would change.
 */
@Controller
@Hidden
class TreeDecisionsPage {

	private static final int MOST_COUNTIES = 500;

	private final Desks desks;

	private final Deciding deciding;

	private final ReadCounties counties;

	TreeDecisionsPage(Desks desks, Deciding deciding, ReadCounties counties) {
		this.desks = desks;
		this.deciding = deciding;
		this.counties = counties;
	}

	@GetMapping("/trees/{tree}/decisions")
	@Access(Who.COORDINATOR)
	String all(@PathVariable String tree, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		AtTree at = AtTree.read(api, tree);
		DeskWords words = this.desks.openForCoordinator(at.county(), viewer, units, model);
		model.addAttribute("at", at);
		model.addAttribute("facts", facts(at, words));
		model.addAttribute("decisions", at.merged() ? List.of(Decision.UNMERGE) : Decision.AT_A_TREE);
		model.addAttribute("measurements", at.merged() ? List.of() : measurements(api, at));
		return "tree-decisions";
	}

	@GetMapping("/trees/{tree}/decisions/{decision}")
	@Access(Who.COORDINATOR)
	String show(@PathVariable String tree, @PathVariable String decision, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		Asked asked = ask(tree, decision, api, form, viewer, units, model);
		this.deciding.show(asked, form, model);
		return "decision";
	}

	@PostMapping("/trees/{tree}/decisions/{decision}")
	@Access(Who.COORDINATOR)
	String decide(@PathVariable String tree, @PathVariable String decision, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model,
			HttpServletResponse response) {
		Asked asked = ask(tree, decision, api, form, viewer, units, model);
		return this.deciding.decide(asked, "decision", api, form, model, response,
				(done) -> then(asked, done, form, viewer));
	}

	private Asked ask(String tree, String key, Api api, Form form, @Nullable Viewer viewer, Units units, Model model) {
		Decision decision = Decision.atATree(key).orElseThrow(() -> Problem.notFound("No decision goes by this name."));
		AtTree at = AtTree.read(api, tree);
		DeskWords words = (decision == Decision.LOCATION) ? this.desks.open(at.county(), units, model)
				: this.desks.openForCoordinator(at.county(), viewer, units, model);
		List<Asked.Fact> facts = facts(at, words);
		String other = (decision == Decision.MERGE) ? "into" : "from";
		if ((decision == Decision.MERGE || decision == Decision.APART) && form.isFilled(other)) {
			addOther(api, form.value(other), words, model);
		}
		if (decision == Decision.LOCATION && form.has("place", "open")) {
			facts.add(exactly(api, at, words));
		}
		String here = "/trees/" + (at.merged() ? at.id() : at.tag()) + "/decisions";
		return new Asked(decision, "/trees/" + at.id(), here + "/" + decision.key(), here,
				words.say("decisions.title", at.tag()), at.seen(), facts, choices(decision, api, at, words), words);
	}

	private static List<Asked.Fact> facts(AtTree at, DeskWords words) {
		List<Asked.Fact> facts = at.facts(words);
		if (at.merged()) {
			facts.add(0, Asked.Fact.of(words.say("desk.tree.merged"), words.say("desk.tree.merged.text")));
		}
		return facts;
	}

	private static void addOther(Api api, String tag, DeskWords words, Model model) {
		AtTree other = AtTree.find(api, tag);
		if (other != null) {
			model.addAttribute("other", other.facts(words));
		}
	}

	private static Asked.Fact exactly(Api api, AtTree at, DeskWords words) {
		JsonNode place = api.get("/trees/{tree}/place", at.id());
		return Asked.Fact.of(words.say("desk.place.exact"),
				words.say("tree.place.within", words.number(place.path("latitude").decimalValue()),
						words.number(place.path("longitude").decimalValue()),
						words.distance(place.path("accuracyMetres").doubleValue())));
	}

	private Map<String, Map<String, String>> choices(Decision decision, Api api, AtTree at, DeskWords words) {
		return switch (decision) {
			case IDENTIFICATION ->
				Map.of("by", words.choices("decide.by.", List.of("leaf", "fruit", "bark", "bud", "record")));
			case LOCATION -> Map.of("county", counties(at, words));
			case VISIBILITY ->
				Map.of("visibility", words.choices("decide.visibility.", List.of("exact", "nearby", "county")));
			case CONDITION -> Map.of("condition", words.choices("condition.",
					List.of("upright", "declining", "damaged", "dead", "fallen", "removed", "not-found")));
			case STEMS -> Map.of("form",
					words.choices("decide.form.",
							List.of("single", "forked-above", "forked-below", "several", "fused")),
					"keeps", measured(api, at, words));
			case SPLIT -> Map.of("measurements", measured(api, at, words));
			default -> Map.of();
		};
	}

	private Map<String, String> counties(AtTree at, DeskWords words) {
		Map<String, String> choices = new LinkedHashMap<>();
		choices.put("", words.say("decide.county.stays", this.desks.find(at.county()).name()));
		this.counties.list("", MOST_COUNTIES)
			.stream()
			.filter((one) -> !one.key().equals(at.county()))
			.forEach((one) -> choices.put(one.key(), one.name()));
		return choices;
	}

	private static Map<String, String> measured(Api api, AtTree at, DeskWords words) {
		Map<String, String> choices = new LinkedHashMap<>();
		api.get("/trees/{tree}/measurements", at.id())
			.path("items")
			.forEach((one) -> choices.put(one.path("id").asString(""), Measured.told(one, words)));
		return choices;
	}

	private static List<Map<String, @Nullable Object>> measurements(Api api, AtTree at) {
		List<Map<String, @Nullable Object>> measurements = Plain.list(api.get("/trees/{tree}/measurements", at.id()));
		List<Map<String, @Nullable Object>> signOffs = Plain.list(api.get("/trees/{tree}/sign-offs", at.id()));
		measurements.forEach((one) -> one.put("signOffs",
				signOffs.stream()
					.filter((signed) -> Objects.equals(one.get("id"), signed.get("measurement"))
							|| Objects.equals(one.get("id"), signed.get("ownMeasurement")))
					.toList()));
		return measurements;
	}

	/** Where what was decided is seen. */
	private static String then(Asked asked, JsonNode done, Form form, @Nullable Viewer viewer) {
		String key = asked.decision().key();
		if (done.has("toBeAnsweredBy")) {
			String from = done.path("fromCounty").asString("");
			String desk = (viewer != null && viewer.coordinates().contains(from)) ? from
					: done.path("toCounty").asString("");
			return "/desk/" + desk + "/relocations?done=proposed";
		}
		String tree = switch (asked.decision()) {
			case MERGE -> done.path("kept").asString("");
			case CONDITION -> done.path("tree").asString("");
			default -> done.path("id").asString("");
		};
		return "/trees/" + tree + "/decisions?done=" + key;
	}

}
