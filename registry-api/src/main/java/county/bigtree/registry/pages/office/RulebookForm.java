package county.bigtree.registry.pages.office;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

import county.bigtree.registry.naming.Names;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.SpeciesField;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A rulebook as fields, and back. What the form doesn't ask for stays as it is in the
 * rules at hand.
 */
final class RulebookForm {

	/** Every way to read girth, height and crown: which of them may bring a title. */
	static final List<String> METHODS = List.of("tape", "string", "string-sticks", "diameter", "half-girth", "taper",
			"stems", "biltmore", "biltmore-reach", "stick", "shadow", "equal-arm", "tangent", "tangent-slope", "sine",
			"two-station", "pole", "axes", "spokes");

	private static final List<String> NUMBERS = List.of("currencyYears", "sightingYears", "remeasureWithin",
			"requiredSignOffs", "requiredSignOffsForTitle", "photosRequired", "oldestFilingMonths", "answerDays",
			"carryForward.heightYears", "carryForward.crownYears", "tolerances.girthInchesPerStep",
			"tolerances.girthShare", "tolerances.heightShare", "tolerances.spreadShare", "tolerances.spreadFeet");

	private static final List<String> WORDS = List.of("effectiveOn", "whenStale", "slopeRule", "carriedOverUntil");

	private static final List<String> ANSWERS = List.of("checkReadingsRequired", "titleNeedsCoordinator");

	private static final List<String> TIES = List.of("tieRule.n", "tieRule.k", "tieRule.atMost");

	private static final String NO_NUMBER = "Write a number, such as 5 or 0.1.";

	private RulebookForm() {
	}

	/** Fills the form with the rules. */
	static Form fill(Form form, JsonNode book) {
		NUMBERS.forEach((name) -> form.put(name, at(book, name).asString("")));
		WORDS.forEach((name) -> form.put(name, at(book, name).asString("")));
		TIES.forEach((name) -> form.put(name, at(book, name).asString("")));
		ANSWERS.forEach((name) -> form.put(name, at(book, name).asBoolean(false) ? "yes" : null));
		form.put("tieRule.kind", at(book, "tieRule.kind").asString(""));
		return form;
	}

	/** What was typed, as the API takes it; slips are errors of the form. */
	static ObjectNode body(Form form, JsonNode present) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		WORDS.forEach((name) -> form.text(body, name));
		NUMBERS.forEach((name) -> form.number(body, name, NO_NUMBER));
		ANSWERS.forEach((name) -> form.yesOrNo(body, name));
		form.text(body, "reason").text(body, "tieRule.kind");
		tie(form, body);
		form.list(body, "titleMethods");
		if (!body.has("tolerances") && present.has("tolerances")) {
			body.set("tolerances", present.path("tolerances"));
		}
		if (!form.isFilled("reason")) {
			form.refuse("reason", "Say why: it is read by who comes after you.");
		}
		if (!form.isFilled("effectiveOn")) {
			form.refuse("effectiveOn", "Say from which day on they hold.");
		}
		return body;
	}

	/** Of the tie rule those figures alone that its kind takes. */
	private static void tie(Form form, ObjectNode body) {
		if (form.has("tieRule.kind", "uncertainty")) {
			form.number(body, "tieRule.k", NO_NUMBER).number(body, "tieRule.atMost", NO_NUMBER);
		}
		else {
			form.number(body, "tieRule.n", NO_NUMBER);
		}
	}

	/** Puts the species into the field by their names, one a line. */
	static void fillSpecies(Form form, JsonNode book, Names names) {
		List<String> keys = StreamSupport.stream(book.path("eligibleSpecies").spliterator(), false)
			.map((one) -> one.asString(""))
			.toList();
		form.put("eligibleSpecies", keys.stream().map(names.of(keys)::species).collect(Collectors.joining("\n")));
	}

	/** Puts the species into the body that are named, one a line; none for all. */
	static void species(Form form, ObjectNode body, SpeciesField species) {
		List<String> lines = form.value("eligibleSpecies")
			.lines()
			.map(String::strip)
			.filter((line) -> !line.isEmpty())
			.toList();
		if (!lines.isEmpty()) {
			var list = body.putArray("eligibleSpecies");
			lines.forEach((line) -> species.key(form, "eligibleSpecies", line).ifPresent(list::add));
		}
	}

	private static JsonNode at(JsonNode book, String name) {
		JsonNode node = book;
		for (String step : name.split("\\.")) {
			node = node.path(step);
		}
		return node;
	}

}
