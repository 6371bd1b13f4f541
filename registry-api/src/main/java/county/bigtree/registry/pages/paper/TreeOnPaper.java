package county.bigtree.registry.pages.paper;

import java.math.BigDecimal;
import java.math.RoundingMode;

import county.bigtree.registry.pages.desk.DeskWords;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.species.Species;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A tree as a sheet names it to whoever asked for the sheet.
 *
 * @param county its name
 * @param place as far as the asker may know it
 * @param last the figures that count at present, in words; null where there are none
 * @param stems what was ruled on its stems, in words; null where nothing was
 */
public record TreeOnPaper(String tag, Species species, String county, String place, @Nullable String last,
		@Nullable String stems) {

	/** Where it stands: exactly for those who may know, else as everybody sees it. */
	static String place(Api api, JsonNode tree, DeskWords words) {
		JsonNode exact = api.find("/trees/{tree}/place", tree.path("id").asString(""));
		JsonNode place = (exact != null) ? exact : tree.path("position");
		if (!place.has("latitude")) {
			return words.say("tree.place.none");
		}
		String locality = (exact != null) ? exact.path("locality").asString("") : "";
		return words.say("tree.place.within", words.number(place.path("latitude").decimalValue()),
				words.number(place.path("longitude").decimalValue()),
				words.distance(place.path("accuracyMetres").asDouble())) + (locality.isEmpty() ? "" : "; " + locality);
	}

	/** The figures behind its present score, said by a message. */
	static @Nullable String last(Api api, JsonNode tree, DeskWords words, String message) {
		String counting = tree.path("score").path("measurement").asString("");
		for (JsonNode score : api.get("/trees/{tree}/scores", tree.path("id").asString("")).path("items")) {
			if (score.path("measurement").asString("").equals(counting) && score.path("withdrawnAt").isNull()) {
				return words.say(message, words.day(score.path("measuredOn").asString("")),
						tenths(score, "girthInches"), tenths(score, "heightFeet"), tenths(score, "crownSpreadFeet"),
						words.points(score.path("points").decimalValue()));
			}
		}
		return null;
	}

	private static String tenths(JsonNode score, String figure) {
		BigDecimal value = score.path(figure).decimalValue();
		return value.setScale(1, RoundingMode.HALF_UP).toPlainString();
	}

}
