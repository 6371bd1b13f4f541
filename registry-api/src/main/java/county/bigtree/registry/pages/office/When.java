package county.bigtree.registry.pages.office;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

import tools.jackson.databind.JsonNode;

/**
 * Writes the days and instants of answers as people read them, in one time zone. Where an
 * answer has none it writes nothing.
 */
record When(ZoneId zone) {

	private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.US);

	private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm", Locale.US);

	static final When UTC = new When(ZoneOffset.UTC);

	/** As of a county. */
	static When in(JsonNode county) {
		return new When(ZoneId.of(county.path("timeZone").asString("UTC")));
	}

	/** Of a day or an instant. */
	public String day(JsonNode node) {
		return written(node, DAY);
	}

	/** The last day before an instant: roles end at the beginning of a day. */
	public String dayBefore(JsonNode node) {
		return node.isString() ? DAY.format(Instant.parse(node.stringValue()).minusNanos(1).atZone(this.zone)) : "";
	}

	/** Of an instant, to the minute. */
	public String time(JsonNode node) {
		return written(node, TIME);
	}

	/** A day as fields of that type take it. */
	public String input(JsonNode node) {
		return node.isString() ? LocalDate.ofInstant(Instant.parse(node.stringValue()), this.zone).toString() : "";
	}

	private String written(JsonNode node, DateTimeFormatter format) {
		String text = node.asString("");
		if (text.length() < 10) {
			return text;
		}
		try {
			return (text.length() == 10) ? DAY.format(LocalDate.parse(text))
					: format.format(Instant.parse(text).atZone(this.zone));
		}
		catch (DateTimeException ex) {
			return text;
		}
	}

}
