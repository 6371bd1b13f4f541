package county.bigtree.registry.pages.office;

import java.util.List;

import county.bigtree.registry.pages.form.Form;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What columns mean, as fields and back. A field holds the name of a column; beside it
 * one may hold an entry that stands for all rows.
 */
final class ImportForm {

	static final int MOST_VISITS = 12;

	private static final List<String> COLUMNS = List.of("species", "tag", "latitude", "longitude", "condition",
			"popularName", "finder", "owner", "contact", "visitNotes", "statedPoints");

	private static final String CONSTANT = ".constant";

	private static final List<String> FIGURES = List.of("girth", "height", "crown");

	private ImportForm() {
	}

	/** How many visits the form asks for. */
	static int visits(Form form) {
		String typed = form.value("visits");
		return typed.matches("[0-9]{1,2}") ? Math.max(1, Math.min(Integer.parseInt(typed), MOST_VISITS)) : 1;
	}

	static Form fill(Form form, JsonNode mapping) {
		form.put("basis", text(mapping.path("basis")));
		form.put("locationAccuracyMetres", number(mapping.path("locationAccuracyMetres")));
		form.put("rowKey", text(mapping.path("rowKey")));
		form.put("incomplete", mapping.hasNonNull("incomplete") ? text(mapping.path("incomplete")) : "keep");
		COLUMNS.forEach((name) -> put(form, name, mapping.path("columns").path(name)));
		JsonNode visits = mapping.path("visits");
		form.put("visits", Integer.toString(Math.max(1, visits.size())));
		for (int at = 0; at < Math.max(1, visits.size()); at++) {
			String visit = "visits." + at + ".";
			put(form, visit + "measuredOn", visits.path(at).path("measuredOn"));
			for (String figure : FIGURES) {
				put(form, visit + figure, visits.path(at).path(figure));
				String unit = text(visits.path(at).path(figure).path("unit"));
				form.put(visit + figure + ".unit", (unit.isEmpty() && !figure.equals("girth")) ? "ft" : unit);
			}
			form.put(visit + "girth.method", text(visits.path(at).path("girth").path("method")));
		}
		return form;
	}

	private static void put(Form form, String name, JsonNode source) {
		form.put(name, source.isString() ? source.stringValue("") : text(source.path("column")));
		form.put(name + CONSTANT, text(source.path("constant")));
	}

	private static String text(JsonNode node) {
		return node.isString() ? node.stringValue("") : "";
	}

	private static String number(JsonNode node) {
		return node.isNumber() ? new java.math.BigDecimal(node.asString("0")).stripTrailingZeros().toPlainString() : "";
	}

	/** The mapping that the form says. */
	static ObjectNode mapping(Form form) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "basis").text(body, "rowKey").text(body, "incomplete");
		form.number(body, "locationAccuracyMetres", "Write a number of metres, such as 50.");
		ObjectNode columns = body.putObject("columns");
		COLUMNS.forEach((name) -> source(form, name, columns, name));
		ArrayNode visits = body.putArray("visits");
		for (int at = 0; at < visits(form); at++) {
			String visit = "visits." + at + ".";
			ObjectNode one = visits.addObject();
			source(form, visit + "measuredOn", one, "measuredOn");
			for (String figure : FIGURES) {
				ObjectNode source = source(form, visit + figure, one, figure);
				if (source != null) {
					put(source, "unit", form.value(visit + figure + ".unit"));
					put(source, "method", figure.equals("girth") ? form.value(visit + "girth.method") : "");
				}
			}
		}
		return body;
	}

	private static void put(ObjectNode source, String name, String value) {
		if (!value.isEmpty()) {
			source.put(name, value);
		}
	}

	/** A column goes before an entry for all rows. */
	private static @org.jspecify.annotations.Nullable ObjectNode source(Form form, String field, ObjectNode into,
			String name) {
		if (form.isFilled(field)) {
			return into.putObject(name).put("column", form.value(field));
		}
		if (form.isFilled(field + CONSTANT)) {
			return into.putObject(name).put("constant", form.value(field + CONSTANT));
		}
		return null;
	}

	/** The field for an entry of the mapping that is refused. */
	static String field(String entry) {
		return entry.equals("measuredOn") ? "visits.0.measuredOn"
				: entry.replaceFirst("^columns\\.", "").replaceFirst("\\.column$", "");
	}

}
