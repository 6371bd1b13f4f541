package county.bigtree.registry.pages.filing;

import java.util.List;
import java.util.stream.Stream;

import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.measure.TypedFigures;
import county.bigtree.registry.people.Actor;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The form of a nomination: its steps, what each needs, and the whole as the API takes
 * it.
 */
final class NominationEntries {

	static final List<String> STEPS = List.of("where", "girth", "height", "crown", "people", "look");

	private static final List<String> WHERE = List.of("county", "species", "speciesName", "location", "locality");

	private static final List<String> FILED_FOR = List.of("filedFor.name", "filedFor.contact", "filedFor.credit",
			"filedFor.consentToCredit");

	private static final String YES = "yes";

	private NominationEntries() {
	}

	/** The step in which a field stands. */
	static String step(String field) {
		return WHERE.contains(field.split("\\.")[0]) ? "where" : MeasurementEntries.step(field);
	}

	/** The field of an entry as the API names it. */
	static String field(String entry, TypedFigures figures) {
		return switch (entry) {
			case "species" -> SpeciesChoice.NAME;
			case "measurement" -> "girth";
			default -> entry.startsWith("measurement.")
					? MeasurementEntries.field(entry.substring("measurement.".length()), figures) : entry;
		};
	}

	/** Notes what a step lacks, or all of them. */
	static void require(String step, Form form, SpeciesChoice species, TypedFigures figures, List<String> counties,
			FilingWords words) {
		boolean all = step.equals(MeasurementEntries.ALL);
		if (all || step.equals("where")) {
			requireWhere(form, species, counties, words);
		}
		if ((all || step.equals("people")) && isFiledFor(form) && !form.isFilled("filedFor.name")) {
			form.refuse("filedFor.name", words.get("filing.for.nameless"));
		}
		MeasurementEntries.require(step, form, figures, words);
	}

	private static void requireWhere(Form form, SpeciesChoice species, List<String> counties, FilingWords words) {
		if (!counties.contains(form.value("county"))) {
			form.refuse("county", words.get("filing.county.missing"));
		}
		if (species.chosen() == null) {
			String why = !form.isFilled(SpeciesChoice.NAME) ? "missing"
					: species.found().isEmpty() ? "unknown" : "several";
			form.refuse(SpeciesChoice.NAME, words.get("filing.species." + why));
		}
		Place.require(form, words);
	}

	static boolean isFiledFor(Form form) {
		return FILED_FOR.stream().anyMatch(form::isFilled);
	}

	/** The nomination as the API takes it. */
	static ObjectNode body(Form form, TypedFigures figures, Actor actor, FilingWords words) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "species").text(body, "locality").text(body, "access").text(body, "visibility");
		form.text(body, "completedAt");
		Place.put(form, body, words);
		owner(form, body);
		if (isFiledFor(form)) {
			form.text(body, "filedFor.name").text(body, "filedFor.contact").text(body, "filedFor.credit");
			form.yesOrNo(body, "filedFor.consentToCredit");
		}
		body.set("measurement", MeasurementEntries.body(form, figures, actor));
		MeasurementEntries.confirm(form, body, body);
		return body;
	}

	/** What the owner said, as far as they were asked. */
	private static void owner(Form form, ObjectNode body) {
		form.text(body, "owner.name").text(body, "owner.contact");
		Stream.of("owner.consentToVisit", "owner.consentToPublish").filter(form::isFilled).forEach((field) -> {
			String name = field.substring("owner.".length());
			body.withObjectProperty("owner").put(name, form.has(field, YES));
		});
	}

}
