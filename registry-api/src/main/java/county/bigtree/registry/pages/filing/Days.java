package county.bigtree.registry.pages.filing;

import java.time.Instant;
import java.time.ZoneId;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Words;
import tools.jackson.databind.JsonNode;

/**
 * Writes days and figures of a county, days as the API gives them.
 */
public record Days(Words words) {

	static Days of(JsonNode county, Units units) {
		return new Days(new Words(ZoneId.of(county.path("timeZone").asString("UTC")), units));
	}

	/** The day of an instant. */
	public String at(String instant) {
		return this.words.day(Instant.parse(instant));
	}

	/** A day, or the month or year as which alone it is known. */
	public String on(String day) {
		return this.words.known(KnownDay.parse(day));
	}

}
