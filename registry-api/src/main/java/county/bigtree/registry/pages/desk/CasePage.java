package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

import county.bigtree.domain.review.MoveDecision;
import county.bigtree.domain.review.Mover;
import county.bigtree.domain.review.NominationMove;
import county.bigtree.domain.review.NominationMoves;
import county.bigtree.domain.review.NominationStatus;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
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
 * A case on the desk: what was filed, what the checks said, what may be the same tree,
 * and the moves that are possible.
 */
@Controller
@Hidden
class CasePage {

	private static final Map<String, List<String>> MOVES_OF_MEASUREMENTS = Map.of("filed", List.of("assign"),
			"assigned", List.of("reassign"));

	private final Desks desks;

	private final Deciding deciding;

	CasePage(Desks desks, Deciding deciding) {
		this.desks = desks;
		this.deciding = deciding;
	}

	@GetMapping("/desk/{county}/nominations/{id}")
	@Access(Who.COORDINATOR)
	String nomination(@PathVariable String county, @PathVariable String id, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		this.deciding.show(ask(county, id, api, viewer, units, model), form, model);
		return "case";
	}

	@PostMapping("/desk/{county}/nominations/{id}")
	@Access(Who.COORDINATOR)
	String nomination(@PathVariable String county, @PathVariable String id, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model,
			HttpServletResponse response) {
		Asked asked = ask(county, id, api, viewer, units, model);
		return this.deciding.decide(asked, "case", api, form, model, response,
				(done) -> asked.here() + "?done=" + done.path("status").asString(""));
	}

	@GetMapping("/desk/{county}/measurements/{id}")
	@Access(Who.COORDINATOR)
	String measurement(@PathVariable String county, @PathVariable String id, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		this.deciding.show(askOfMeasurement(county, id, api, viewer, units, model), form, model);
		return "case";
	}

	@PostMapping("/desk/{county}/measurements/{id}")
	@Access(Who.COORDINATOR)
	String measurement(@PathVariable String county, @PathVariable String id, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model,
			HttpServletResponse response) {
		Asked asked = askOfMeasurement(county, id, api, viewer, units, model);
		return this.deciding.decide(asked, "case", api, form, model, response,
				(done) -> asked.here() + "?done=" + done.path("status").asString(""));
	}

	private Asked ask(String county, String id, Api api, @Nullable Viewer viewer, Units units, Model model) {
		DeskWords words = this.desks.openForCoordinator(county, viewer, units, model);
		Api.Read read = api.read("/nominations/{id}", id);
		JsonNode nomination = read.json();
		AtTree at = atDesk(api, nomination.path("tree").asString(""), county);
		Map<String, String> people = people(api, county);
		String status = nomination.path("status").asString("");
		List<Asked.Fact> facts = at.facts(words);
		facts.add(Asked.Fact.of(words.say("case.status"), words.say("desk.nomination.status." + status)));
		facts.add(Asked.Fact.of(words.say("case.filed"), words.time(nomination.path("recordedAt").asString(""))));
		String verifier = nomination.path("verifier").asString("");
		if (!verifier.isEmpty()) {
			facts.add(Asked.Fact.of(words.say("case.verifier"),
					people.getOrDefault(verifier, words.say("case.verifier.other"))));
		}
		facts.add(
				Asked.Fact.of(words.say("case.access"), words.say("access." + nomination.path("access").asString(""))));
		addCase(nomination.path("measurement"), nomination.path("moves"), at, api, model);
		String address = "/nominations/" + nomination.path("id").asString("");
		return new Asked(Decision.MOVE, address, "/desk/" + county + address, "/desk/" + county,
				words.say("desk.room.queue"), read.seen(), facts, choices(moves(status), people, words), words);
	}

	private Asked askOfMeasurement(String county, String id, Api api, @Nullable Viewer viewer, Units units,
			Model model) {
		DeskWords words = this.desks.openForCoordinator(county, viewer, units, model);
		Api.Read read = api.read("/measurements/{id}", id);
		JsonNode measurement = read.json();
		AtTree at = atDesk(api, measurement.path("tree").asString(""), county);
		String status = measurement.path("status").asString("");
		List<Asked.Fact> facts = at.facts(words);
		facts.add(Asked.Fact.of(words.say("case.status"), words.say("desk.measurement.status." + status)));
		facts.add(Asked.Fact.of(words.say("case.filed"), words.time(measurement.path("recordedAt").asString(""))));
		addCase(measurement, null, at, api, model);
		String address = "/measurements/" + measurement.path("id").asString("");
		return new Asked(Decision.MOVE, address, "/desk/" + county + address, "/desk/" + county,
				words.say("desk.room.queue"), read.seen(), facts,
				choices(MOVES_OF_MEASUREMENTS.getOrDefault(status, List.of()), people(api, county), words), words);
	}

	/** Cases are seen at the desk of the county where the tree stands. */
	private static AtTree atDesk(Api api, String tree, String county) {
		AtTree at = AtTree.read(api, tree);
		if (!at.county().equals(county)) {
			throw Problem.notFound("No case of this county has this id.");
		}
		return at;
	}

	private static void addCase(JsonNode measurement, @Nullable JsonNode moves, AtTree at, Api api, Model model) {
		model.addAttribute("at", at);
		model.addAttribute("measurement", Plain.map(measurement));
		model.addAttribute("readings", Readings.told(measurement.path("readings")));
		model.addAttribute("moves", (moves != null) ? Plain.list(moves) : List.of());
		String id = measurement.path("id").asString("");
		model.addAttribute("signOffs",
				Plain.list(api.get("/trees/{tree}/sign-offs", at.id()))
					.stream()
					.filter((one) -> id.equals(one.get("measurement")))
					.toList());
		model.addAttribute("duplicates",
				Plain.list(api.get("/counties/{county}/likely-duplicates?tree={tree}", at.county(), at.id())));
	}

	/** Whoever verifies or coordinates there, by id. */
	static Map<String, String> people(Api api, String county) {
		Map<String, String> people = new LinkedHashMap<>();
		api.get("/people?county={county}&limit=500", county).path("items").forEach((person) -> {
			boolean verifies = Stream.of("verifier", "coordinator")
				.anyMatch((role) -> holds(person.path("roles"), role, county));
			if (verifies && person.path("active").asBoolean()) {
				people.put(person.path("id").asString(""), person.path("creditName").asString(""));
			}
		});
		return people;
	}

	private static boolean holds(JsonNode roles, String role, String county) {
		List<JsonNode> held = new ArrayList<>();
		roles.forEach(held::add);
		return held.stream()
			.anyMatch((one) -> role.equals(one.path("role").asString(""))
					&& county.equals(one.path("county").asString("")));
	}

	private static List<String> moves(String status) {
		return NominationStatus.find(status)
			.map((from) -> Stream.of(NominationMove.values())
				.filter((move) -> move != NominationMove.ACCEPT)
				.filter((move) -> NominationMoves.decide(from, move,
						Set.of(Mover.COORDINATOR)) instanceof MoveDecision.Moved)
				.map(NominationMove::code)
				.toList())
			.orElse(List.of());
	}

	private static Map<String, Map<String, String>> choices(List<String> moves, Map<String, String> people,
			DeskWords words) {
		Map<String, String> verifiers = new LinkedHashMap<>();
		verifiers.put("", words.say("case.verifier.none"));
		verifiers.putAll(people);
		return Map.of("move", words.choices("desk.move.", moves), "verifier", verifiers);
	}

}
