package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

import county.bigtree.registry.pages.form.Api;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Component;

/**
 * Asks for the yes that a sign-off may wait for, and whether to take back what counted.
 */
@Component
class AskAboutSignOff {

	private final Desks desks;

	AskAboutSignOff(Desks desks) {
		this.desks = desks;
	}

	Asked askForAssent(String id, Asking asking) {
		return ask(Decision.ASSENT, id, asking, (state) -> !state.equals("waits"), "decide.closed.assent");
	}

	Asked askToRevoke(String id, Asking asking) {
		return ask(Decision.REVOCATION, id, asking, "revoked"::equals, "decide.closed.revocation");
	}

	private Asked ask(Decision decision, String id, Asking asking, Predicate<String> decided, String why) {
		Api.Read read = asking.api().read("/sign-offs/{id}", id);
		AtTree at = AtTree.read(asking.api(), read.json().path("tree").asString(""));
		DeskWords words = asking.open(this.desks, at.county());
		String address = "/sign-offs/" + read.json().path("id").asString("");
		return new Asked(decision, address, address + decision.action(), address,
				words.say("sign-off.given.title", at.tag()), read.seen(), facts(read.json(), at, words), Map.of(),
				words)
			.closedIf(decided.test(state(read.json())), why);
	}

	Asked askToSetAside(String id, Asking asking) {
		Api.Read read = asking.api().read("/measurements/{id}", id);
		JsonNode measurement = read.json();
		AtTree at = AtTree.read(asking.api(), measurement.path("tree").asString(""));
		DeskWords words = asking.open(this.desks, at.county());
		List<Asked.Fact> facts = at.facts(words);
		facts.add(Asked.Fact.of(words.say("desk.measurement"), Measured.told(measurement, words)));
		String address = "/measurements/" + measurement.path("id").asString("");
		return new Asked(Decision.SETTING_ASIDE, address, address + "/setting-aside",
				"/trees/" + at.tag() + "/decisions", words.say("decisions.title", at.tag()), read.seen(), facts,
				Map.of(), words)
			.closedIf(measurement.path("status").asString("").equals("set-aside"), "decide.closed.setting-aside");
	}

	static List<Asked.Fact> facts(JsonNode signOff, AtTree at, DeskWords words) {
		List<Asked.Fact> facts = new ArrayList<>(at.facts(words));
		facts.add(Asked.Fact.of(words.say("sign-off.verdict"),
				words.say("verdict." + signOff.path("verdict").asString(""))));
		facts.add(Asked.Fact.of(words.say("sign-off.by"), words.say("sign-off.by.on",
				signOff.path("givenBy").asString(""), words.day(signOff.path("recordedAt").asString("")))));
		facts.add(Asked.Fact.of(words.say("sign-off.state"), words.say("sign-off.state." + state(signOff))));
		return facts;
	}

	private static String state(JsonNode signOff) {
		if (signOff.path("revoked").asBoolean()) {
			return "revoked";
		}
		return signOff.path("waitsForCoordinator").asBoolean() ? "waits" : "stands";
	}

}
