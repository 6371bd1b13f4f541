package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
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
 * A sign-off with its agreement, the yes that it may wait for, and taking back what
 * counted.
 */
@Controller
@Hidden
class SignOffsPage {

	private final Desks desks;

	private final Deciding deciding;

	SignOffsPage(Desks desks, Deciding deciding) {
		this.desks = desks;
		this.deciding = deciding;
	}

	@GetMapping("/sign-offs/{id}")
	@Access(Who.VERIFIER)
	String signOff(@PathVariable String id, Api api, Form form, @ModelAttribute("units") Units units,
			@ModelAttribute("viewer") @Nullable Viewer viewer, Model model) {
		JsonNode signOff = api.get("/sign-offs/{id}", id);
		AtTree at = AtTree.read(api, signOff.path("tree").asString(""));
		DeskWords words = this.desks.open(at.county(), units, model);
		model.addAttribute("signOff", Plain.map(signOff));
		model.addAttribute("at", at);
		model.addAttribute("facts", facts(signOff, at, words));
		model.addAttribute("decides", viewer != null && viewer.coordinates().contains(at.county()));
		return "sign-off-given";
	}

	@GetMapping("/sign-offs/{id}/assent")
	@Access(Who.COORDINATOR)
	String assent(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.deciding.show(ask(Decision.ASSENT, id, api, viewer, units, model), form, model);
		return "decision";
	}

	@PostMapping("/sign-offs/{id}/assent")
	@Access(Who.COORDINATOR)
	String assent(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		Asked asked = ask(Decision.ASSENT, id, api, viewer, units, model);
		return this.deciding.decide(asked, "decision", api, form, model, response,
				(done) -> asked.back() + "?done=assent");
	}

	@GetMapping("/sign-offs/{id}/revocation")
	@Access(Who.COORDINATOR)
	String revoke(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.deciding.show(ask(Decision.REVOCATION, id, api, viewer, units, model), form, model);
		return "decision";
	}

	@PostMapping("/sign-offs/{id}/revocation")
	@Access(Who.COORDINATOR)
	String revoke(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		Asked asked = ask(Decision.REVOCATION, id, api, viewer, units, model);
		return this.deciding.decide(asked, "decision", api, form, model, response,
				(done) -> asked.back() + "?done=revocation");
	}

	@GetMapping("/measurements/{id}/setting-aside")
	@Access(Who.COORDINATOR)
	String setAside(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.deciding.show(askOfMeasurement(id, api, viewer, units, model), form, model);
		return "decision";
	}

	@PostMapping("/measurements/{id}/setting-aside")
	@Access(Who.COORDINATOR)
	String setAside(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		Asked asked = askOfMeasurement(id, api, viewer, units, model);
		return this.deciding.decide(asked, "decision", api, form, model, response,
				(done) -> asked.back() + "?done=setting-aside");
	}

	private Asked ask(Decision decision, String id, Api api, @Nullable Viewer viewer, Units units, Model model) {
		Api.Read read = api.read("/sign-offs/{id}", id);
		AtTree at = AtTree.read(api, read.json().path("tree").asString(""));
		DeskWords words = this.desks.openForCoordinator(at.county(), viewer, units, model);
		String address = "/sign-offs/" + read.json().path("id").asString("");
		return new Asked(decision, address, address + decision.action(), address,
				words.say("sign-off.given.title", at.tag()), read.seen(), facts(read.json(), at, words), Map.of(),
				words);
	}

	private Asked askOfMeasurement(String id, Api api, @Nullable Viewer viewer, Units units, Model model) {
		Api.Read read = api.read("/measurements/{id}", id);
		JsonNode measurement = read.json();
		AtTree at = AtTree.read(api, measurement.path("tree").asString(""));
		DeskWords words = this.desks.openForCoordinator(at.county(), viewer, units, model);
		List<Asked.Fact> facts = at.facts(words);
		facts.add(Asked.Fact.of(words.say("desk.measurement"), Measured.told(measurement, words)));
		String address = "/measurements/" + measurement.path("id").asString("");
		return new Asked(Decision.SETTING_ASIDE, address, address + "/setting-aside",
				"/trees/" + at.tag() + "/decisions", words.say("decisions.title", at.tag()), read.seen(), facts,
				Map.of(), words);
	}

	private static List<Asked.Fact> facts(JsonNode signOff, AtTree at, DeskWords words) {
		List<Asked.Fact> facts = new ArrayList<>(at.facts(words));
		facts.add(Asked.Fact.of(words.say("sign-off.verdict"),
				words.say("verdict." + signOff.path("verdict").asString(""))));
		facts.add(Asked.Fact.of(words.say("sign-off.by"), words.say("sign-off.by.on",
				signOff.path("givenBy").asString(""), words.day(signOff.path("recordedAt").asString("")))));
		facts.add(Asked.Fact.of(words.say("sign-off.state"), words.say("sign-off.state." + state(signOff))));
		return facts;
	}

	static String state(JsonNode signOff) {
		if (signOff.path("revoked").asBoolean()) {
			return "revoked";
		}
		return signOff.path("waitsForCoordinator").asBoolean() ? "waits" : "stands";
	}

}
