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
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Plain;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/**
 * Asks what is to become of a case: what was filed, what the checks said, what may be the
 * same tree, and the moves that are possible.
 */
@Component
class AskAboutCase {

	private static final Map<String, List<String>> MOVES_OF_MEASUREMENTS = Map.of("filed", List.of("assign"),
			"assigned", List.of("reassign"));

	private final Desks desks;

	AskAboutCase(Desks desks) {
		this.desks = desks;
	}

	Asked askOfNomination(String county, String id, Asking asking) {
		DeskWords words = asking.open(this.desks, county);
		Api.Read read = asking.api().read("/nominations/{id}", id);
		JsonNode nomination = read.json();
		AtTree at = atDesk(asking.api(), nomination.path("tree").asString(""), county);
		Map<String, String> people = people(asking.api(), county);
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
		addCase(nomination.path("measurement"), nomination.path("moves"), at, asking);
		String address = "/nominations/" + nomination.path("id").asString("");
		return new Asked(Decision.MOVE, address, "/desk/" + county + address, "/desk/" + county,
				words.say("desk.room.queue"), read.seen(), facts, choices(moves(status), people, words), words);
	}

	Asked askOfMeasurement(String county, String id, Asking asking) {
		DeskWords words = asking.open(this.desks, county);
		Api.Read read = asking.api().read("/measurements/{id}", id);
		JsonNode measurement = read.json();
		AtTree at = atDesk(asking.api(), measurement.path("tree").asString(""), county);
		String status = measurement.path("status").asString("");
		List<Asked.Fact> facts = at.facts(words);
		facts.add(Asked.Fact.of(words.say("case.status"), words.say("desk.measurement.status." + status)));
		facts.add(Asked.Fact.of(words.say("case.filed"), words.time(measurement.path("recordedAt").asString(""))));
		addCase(measurement, null, at, asking);
		String address = "/measurements/" + measurement.path("id").asString("");
		return new Asked(Decision.MOVE, address, "/desk/" + county + address, "/desk/" + county,
				words.say("desk.room.queue"), read.seen(), facts,
				choices(MOVES_OF_MEASUREMENTS.getOrDefault(status, List.of()), people(asking.api(), county), words),
				words);
	}

	/** Cases are seen at the desk of the county where the tree stands. */
	private static AtTree atDesk(Api api, String tree, String county) {
		AtTree at = AtTree.read(api, tree);
		if (!at.county().equals(county)) {
			throw Problem.notFound("No case of this county has this id.");
		}
		return at;
	}

	private static void addCase(JsonNode measurement, @Nullable JsonNode moves, AtTree at, Asking asking) {
		Model model = asking.model();
		model.addAttribute("at", at);
		model.addAttribute("measurement", Plain.map(measurement));
		model.addAttribute("readings", Readings.told(measurement.path("readings")));
		model.addAttribute("moves", (moves != null) ? Plain.list(moves) : List.of());
		String id = measurement.path("id").asString("");
		model.addAttribute("signOffs",
				Plain.list(asking.api().get("/trees/{tree}/sign-offs", at.id()))
					.stream()
					.filter((one) -> id.equals(one.get("measurement")))
					.toList());
		model.addAttribute("duplicates",
				Plain.list(asking.api().get("/counties/{county}/likely-duplicates?tree={tree}", at.county(), at.id())));
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
