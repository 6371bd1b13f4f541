package county.bigtree.registry.pages.desk;

import java.util.List;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
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
 * Decisions on what others filed: condition reports, and proposals over the county's
 * line.
 */
@Controller
@Hidden
class ReportsPage {

	private final Desks desks;

	private final Deciding deciding;

	ReportsPage(Desks desks, Deciding deciding) {
		this.desks = desks;
		this.deciding = deciding;
	}

	@GetMapping("/condition-reports/{id}/decision")
	@Access(Who.COORDINATOR)
	String report(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.deciding.show(askOfReport(id, api, viewer, units, model), form, model);
		return "decision";
	}

	@PostMapping("/condition-reports/{id}/decision")
	@Access(Who.COORDINATOR)
	String report(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		Asked asked = askOfReport(id, api, viewer, units, model);
		return this.deciding.decide(asked, "decision", api, form, model, response,
				(done) -> asked.back() + "?done=report");
	}

	@GetMapping("/relocations/{id}/decision")
	@Access(Who.COORDINATOR)
	String relocation(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.deciding.show(askOfRelocation(id, api, viewer, units, model), form, model);
		return "decision";
	}

	@PostMapping("/relocations/{id}/decision")
	@Access(Who.COORDINATOR)
	String relocation(@PathVariable String id, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		Asked asked = askOfRelocation(id, api, viewer, units, model);
		return this.deciding.decide(asked, "decision", api, form, model, response,
				(done) -> asked.back() + "?done=relocation");
	}

	private Asked askOfReport(String id, Api api, @Nullable Viewer viewer, Units units, Model model) {
		Api.Read read = api.read("/condition-reports/{id}", id);
		JsonNode report = read.json();
		AtTree at = AtTree.read(api, report.path("tree").asString(""));
		DeskWords words = this.desks.openForCoordinator(at.county(), viewer, units, model);
		List<Asked.Fact> facts = at.facts(words);
		facts.add(Asked.Fact.of(words.say("reports.reported"),
				words.say("reports.reported.on", words.say("condition." + report.path("condition").asString("")),
						words.day(report.path("observedOn").asString("")))));
		facts.add(Asked.Fact.of(words.say("reports.state"),
				words.say("reports.state." + report.path("status").asString(""))));
		String address = "/condition-reports/" + report.path("id").asString("");
		return new Asked(Decision.REPORT, address, address + "/decision", "/desk/" + at.county() + "/reports",
				words.say("desk.room.reports"), read.seen(), facts, Map.of(), words);
	}

	/**
	 * For the coordinators of both counties to see, and for the one to answer whose
	 * county did not propose it.
	 */
	private Asked askOfRelocation(String id, Api api, @Nullable Viewer viewer, Units units, Model model) {
		Api.Read read = api.read("/relocations/{id}", id);
		JsonNode proposal = read.json();
		String county = proposal.path("toBeAnsweredBy").asString("");
		if (viewer == null || !viewer.coordinates().contains(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only the other county's coordinators can agree to it.");
		}
		DeskWords words = this.desks.open(county, units, model);
		AtTree at = AtTree.find(api, proposal.path("tree").asString(""));
		List<Asked.Fact> facts = (at != null) ? at.facts(words) : new java.util.ArrayList<>();
		facts.add(Asked.Fact.of(words.say("relocations.proposed"),
				words.say("relocations.proposed.text", name(proposal, "fromCounty"), name(proposal, "toCounty"),
						words.number(proposal.path("latitude").decimalValue()),
						words.number(proposal.path("longitude").decimalValue()),
						words.number(proposal.path("accuracyMetres").decimalValue()))));
		facts.add(Asked.Fact.of(words.say("decide.entry.reason"), proposal.path("reason").asString("")));
		String address = "/relocations/" + proposal.path("id").asString("");
		return new Asked(Decision.RELOCATION, address, address + "/decision", "/desk/" + county + "/relocations",
				words.say("desk.room.relocations"), read.seen(), facts, Map.of(), words);
	}

	private String name(JsonNode proposal, String county) {
		return this.desks.find(proposal.path(county).asString("")).name();
	}

}
