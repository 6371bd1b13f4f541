package county.bigtree.registry.pages.desk;

import java.math.BigDecimal;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A measurement in a line.
 */
final class Measured {

	private Measured() {
	}

	/** Its day, points and status. */
	static String told(JsonNode measurement, DeskWords words) {
		return words.say("tree.measurement", words.day(measurement.path("measuredOn").asString("")),
				words.points(number(measurement, "points")),
				words.say("desk.measurement.status." + measurement.path("status").asString("")));
	}

	private static @Nullable BigDecimal number(JsonNode measurement, String figure) {
		JsonNode value = measurement.path("reduced").path(figure);
		return value.isNumber() ? value.decimalValue() : null;
	}

}
