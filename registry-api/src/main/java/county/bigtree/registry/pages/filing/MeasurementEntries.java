package county.bigtree.registry.pages.filing;

import java.time.DateTimeException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.quantity.LengthText;
import county.bigtree.domain.quantity.LengthUnit;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.measure.TypedFigures;
import county.bigtree.registry.people.Actor;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The part of a form that tells of a measurement: readings, day, measurers, remarks, and
 * the questions that were answered.
 */
final class MeasurementEntries {

	static final String ALL = "all";

	static final String CONFIRMED = "confirmedChecks";

	/** The figures for which they were confirmed. */
	static final String CONFIRMED_FOR = "confirmedFor";

	/** How high above the ground the girth was taken, where not at breast height. */
	private static final String GIRTH_AT = "girthAt.height";

	private static final String GIRTH_WHY = "girthAt.why";

	private static final List<String> ENTRIES = List.of("measuredOn", "measuredBy", "remarks", CONFIRMED);

	private MeasurementEntries() {
	}

	/** The measurement as the API takes it. */
	static ObjectNode body(Form form, TypedFigures figures, Actor actor) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		figures.put(body);
		if (body.has("girth")) {
			takenElsewhere(form, body.withObjectProperty("girth"));
		}
		form.text(body, "measuredOn").text(body, "remarks");
		ArrayNode measurers = body.putArray("measuredBy");
		names(form.value("measuredBy")).forEach((name) -> {
			if (actor.isCalled(name)) {
				measurers.addObject().put("person", actor.id().toString());
			}
			else {
				measurers.add(name);
			}
		});
		return body;
	}

	private static void requireDay(Form form, FilingWords words) {
		if (!form.isFilled("measuredOn")) {
			form.refuse("measuredOn", words.get("filing.day.missing"));
			return;
		}
		try {
			KnownDay.parse(form.value("measuredOn"));
		}
		catch (DateTimeException ex) {
			form.refuse("measuredOn", words.get("filing.day.unreadable"));
		}
	}

	/** Names in one line, parted by commas or by "and". */
	static List<String> names(String line) {
		return Arrays.stream(line.split(",|;|\\band\\b|&")).map(String::strip).filter((one) -> !one.isEmpty()).toList();
	}

	/** Where on the stem the girth was taken, if not at breast height. */
	private static void takenElsewhere(Form form, ObjectNode girth) {
		if (form.isFilled(GIRTH_AT)) {
			try {
				girth.set("heightAboveGround",
						ReadingsJson.write(LengthText.read(form.value(GIRTH_AT), LengthUnit.FT)));
			}
			catch (InvalidReadingException ex) {
				form.refuse(GIRTH_AT, ex.detail());
			}
		}
		if (form.isFilled(GIRTH_WHY)) {
			girth.put("placement", form.value(GIRTH_WHY));
		}
	}

	/** Notes what a step lacks; all steps where it is {@value #ALL}. */
	static void require(String step, Form form, TypedFigures figures, FilingWords words) {
		boolean all = step.equals(ALL);
		figures.errors().forEach((field, detail) -> {
			if (all || field.startsWith(step + ".")) {
				form.refuse(field, words.get("measure." + field.split("\\.")[0]) + ": " + detail);
			}
		});
		if (all && figures.readings() == null && figures.errors().isEmpty()) {
			form.refuse(field("girth", figures), words.get("filing.readings.none"));
		}
		if (all || step.equals("people")) {
			requireDay(form, words);
		}
	}

	/** Answers hold for what they were given for: other figures are asked about anew. */
	static void confirm(Form form, ObjectNode whole, ObjectNode into) {
		String of = Integer.toHexString(whole.toString().hashCode());
		if (!of.equals(form.value(CONFIRMED_FOR))) {
			form.put(CONFIRMED, null).put(CONFIRMED_FOR, of);
		}
		form.list(into, CONFIRMED);
	}

	/** The field of an entry of the API, as {@code girth.length.value}. */
	static String field(String entry, TypedFigures figures) {
		if (entry.startsWith("girth.heightAboveGround") || entry.startsWith("girth.placement")) {
			return entry.startsWith("girth.placement") ? GIRTH_WHY : GIRTH_AT;
		}
		String[] steps = entry.split("\\.");
		if (TypedFigures.NAMES.contains(steps[0])) {
			String input = steps[0] + "." + figures.get(steps[0]).form().fields().get(0).inputs().get(0);
			return (steps.length > 1 && isInput(figures, steps[0], steps[1])) ? steps[0] + "." + steps[1] : input;
		}
		return ENTRIES.contains(steps[0]) ? steps[0] : entry;
	}

	private static boolean isInput(TypedFigures figures, String figure, String input) {
		return figures.get(figure).form().fields().stream().anyMatch((field) -> field.inputs().contains(input));
	}

	/** The step in which a field stands. */
	static String step(String field) {
		String first = field.split("\\.")[0];
		return TypedFigures.NAMES.contains(first) ? first
				: Map.of(CONFIRMED, "look", "girthAt", "girth").getOrDefault(first, "people");
	}

}
