package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Component;

/**
 * Asks what is to become of what others filed: condition reports, and proposals over the
 * county's line.
 */
@Component
class AskAboutReport {

	private final Desks desks;

	AskAboutReport(Desks desks) {
		this.desks = desks;
	}

	Asked askOfReport(String id, Asking asking) {
		Api.Read read = asking.api().read("/condition-reports/{id}", id);
		JsonNode report = read.json();
		AtTree at = AtTree.read(asking.api(), report.path("tree").asString(""));
		DeskWords words = asking.open(this.desks, at.county());
		List<Asked.Fact> facts = at.facts(words);
		facts.add(Asked.Fact.of(words.say("reports.reported"),
				words.say("reports.reported.on", words.say("condition." + report.path("condition").asString("")),
						words.day(report.path("observedOn").asString("")))));
		facts.add(Asked.Fact.of(words.say("reports.state"),
				words.say("reports.state." + report.path("status").asString(""))));
		String address = "/condition-reports/" + report.path("id").asString("");
		return new Asked(Decision.REPORT, address, address + "/decision", "/desk/" + at.county() + "/reports",
				words.say("desk.room.reports"), read.seen(), facts, Map.of(), words)
			.closedIf(!report.path("status").asString("").equals("waiting"), "decide.closed.report");
	}

	/** Of the coordinators whose county did not propose it. */
	Asked askOfRelocation(String id, Asking asking) {
		Api.Read read = asking.api().read("/relocations/{id}", id);
		JsonNode proposal = read.json();
		String county = proposal.path("toBeAnsweredBy").asString("");
		if (!asking.coordinates(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only the other county's coordinators can agree to it.");
		}
		DeskWords words = asking.open(this.desks, county);
		AtTree at = AtTree.find(asking.api(), proposal.path("tree").asString(""));
		List<Asked.Fact> facts = (at != null) ? at.facts(words) : new ArrayList<>();
		facts.add(Asked.Fact.of(words.say("relocations.proposed"),
				words.say("relocations.proposed.text", name(proposal, "fromCounty"), name(proposal, "toCounty"),
						words.number(proposal.path("latitude").decimalValue()),
						words.number(proposal.path("longitude").decimalValue()),
						words.number(proposal.path("accuracyMetres").decimalValue()))));
		facts.add(Asked.Fact.of(words.say("decide.entry.reason"), proposal.path("reason").asString("")));
		String address = "/relocations/" + proposal.path("id").asString("");
		return new Asked(Decision.RELOCATION, address, address + "/decision", "/desk/" + county + "/relocations",
				words.say("desk.room.relocations"), read.seen(), facts, Map.of(), words)
			.closedIf(!proposal.path("status").asString("").equals("waiting"), "decide.closed.relocation");
	}

	private String name(JsonNode proposal, String county) {
		return this.desks.find(proposal.path(county).asString("")).name();
	}

}
