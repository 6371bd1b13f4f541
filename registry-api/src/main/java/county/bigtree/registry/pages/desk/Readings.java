package county.bigtree.registry.pages.desk;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import tools.jackson.databind.JsonNode;

/**
 * Readings as they were entered: for each figure its method, and what was read.
 */
public final class Readings {

	private Readings() {
	}

	/** By figure, as far as there are any. */
	public static Map<String, Taken> told(JsonNode readings) {
		Map<String, Taken> told = new LinkedHashMap<>();
		for (String figure : List.of("girth", "height", "crown")) {
			JsonNode reading = readings.path(figure);
			if (reading.isObject()) {
				told.put(figure, taken(reading));
			}
		}
		return told;
	}

	private static Taken taken(JsonNode reading) {
		Map<String, String> entries = new LinkedHashMap<>();
		reading.properties().forEach((entry) -> {
			if (!entry.getKey().equals("method")) {
				entries.put(entry.getKey(), quantity(entry.getValue()));
			}
		});
		return new Taken(reading.path("method").asString(""), entries);
	}

	private static String quantity(JsonNode value) {
		if (value.isArray() || value.has("segments")) {
			List<String> parts = new ArrayList<>();
			(value.isArray() ? value : value.path("segments")).forEach((part) -> parts.add(quantity(part)));
			return String.join(value.isArray() ? ", " : " + ", parts);
		}
		if (value.has("feet") || value.has("inches")) {
			return value.path("feet").asString("0") + " ft " + value.path("inches").asString("0") + " in";
		}
		if (value.has("value")) {
			String unit = value.path("unit").asString("");
			return plain(value.path("value")) + (unit.equals("deg") ? "°" : unit.equals("pct") ? " %" : " " + unit);
		}
		return value.isValueNode() ? value.asString("") : value.toString();
	}

	/** A number without the zeros at its end that say nothing. */
	private static String plain(JsonNode number) {
		if (!number.isNumber()) {
			return number.asString("");
		}
		BigDecimal stripped = number.decimalValue().stripTrailingZeros();
		return stripped.setScale(Math.max(0, stripped.scale())).toPlainString();
	}

	/**
	 * One figure's reading.
	 *
	 * @param entries what was read, by its name
	 */
	public record Taken(String method, Map<String, String> entries) {
	}

}
