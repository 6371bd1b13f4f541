package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Plain;
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
 * A visit: the packet to take along, and what came of it.
 */
@Controller
@Hidden
class VisitPage {

	private static final List<String> OUTCOMES = List.of("measured", "seen", "not-found", "refused", "no-answer",
			"unsafe", "not-reached");

	private final Desks desks;

	private final Deciding deciding;

	VisitPage(Desks desks, Deciding deciding) {
		this.desks = desks;
		this.deciding = deciding;
	}

	@GetMapping("/visits/{id}")
	@Access(Who.VERIFIER_OR_GUEST)
	String packet(@PathVariable String id, Api api, Form form, @ModelAttribute("units") Units units, Model model) {
		JsonNode visit = api.get("/visits/{id}", id);
		this.desks.open(visit.path("county").asString(""), units, model);
		String tree = visit.path("tree").asString("");
		AtTree at = AtTree.read(api, tree);
		model.addAttribute("visit", Plain.map(visit));
		model.addAttribute("at", at);
		model.addAttribute("place", place(api, at));
		model.addAttribute("measurements", measurements(api, at));
		return "visit";
	}

	/** Where the tree exactly stands, for those who may know. */
	static @Nullable Map<String, @Nullable Object> place(Api api, AtTree at) {
		JsonNode place = api.find("/trees/{tree}/place", at.id());
		return (place != null) ? Plain.map(place) : null;
	}

	/** What a visitor compares with. */
	static List<Map<String, @Nullable Object>> measurements(Api api, AtTree at) {
		List<Map<String, @Nullable Object>> measurements = new ArrayList<>();
		api.get("/trees/{tree}/measurements", at.id()).path("items").forEach((one) -> {
			if (List.of("filed", "assigned", "counting", "not-confirmed").contains(one.path("status").asString(""))) {
				Map<String, @Nullable Object> measurement = Plain.map(one);
				measurement.put("taken", Readings.told(one.path("readings")));
				measurements.add(measurement);
			}
		});
		return measurements;
	}

	@GetMapping("/visits/{id}/outcome")
	@Access(Who.VERIFIER_OR_GUEST)
	String outcome(@PathVariable String id, Api api, Form form, @ModelAttribute("units") Units units, Model model) {
		Asked asked = ask(id, api, units, model);
		if (!form.isFilled("visitedOn")) {
			form.put("visitedOn", asked.words().today().toString());
		}
		this.deciding.show(asked, form, model);
		return "decision";
	}

	@PostMapping("/visits/{id}/outcome")
	@Access(Who.VERIFIER_OR_GUEST)
	String outcome(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		Asked asked = ask(id, api, units, model);
		return this.deciding.decide(asked, "decision", api, form, model, response,
				(done) -> done.path("guest").asBoolean() ? "/" : asked.back() + "?done=outcome");
	}

	private Asked ask(String id, Api api, Units units, Model model) {
		Api.Read read = api.read("/visits/{id}", id);
		JsonNode visit = read.json();
		DeskWords words = this.desks.open(visit.path("county").asString(""), units, model);
		AtTree at = AtTree.read(api, visit.path("tree").asString(""));
		List<Asked.Fact> facts = at.facts(words);
		facts.add(Asked.Fact.of(words.say("visit.purpose"),
				words.say("visit.purpose." + visit.path("purpose").asString(""))));
		facts.add(Asked.Fact.of(words.say("visit.verifier"), visit.path("verifierName").asString("")));
		Map<String, String> measurements = new LinkedHashMap<>();
		measurements.put("", words.say("visit.measurement.none"));
		api.get("/trees/{tree}/measurements", at.id())
			.path("items")
			.forEach((one) -> measurements.put(one.path("id").asString(""), Measured.told(one, words)));
		String address = "/visits/" + visit.path("id").asString("");
		return new Asked(Decision.OUTCOME, address, address + "/outcome", address, words.say("visit.title", at.tag()),
				read.seen(), facts,
				Map.of("outcome", words.choices("visit.outcome.", OUTCOMES), "measurement", measurements), words);
	}

}
