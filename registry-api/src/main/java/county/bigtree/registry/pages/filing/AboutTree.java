package county.bigtree.registry.pages.filing;

import java.time.Instant;
import java.time.ZoneId;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Words;
import county.bigtree.registry.pages.form.Api;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * The tree that a page tells of, and its county's way of writing days.
 *
 * @param listed whether it has a page that all may see
 * @param county its key
 */
public record AboutTree(String id, String tag, SpeciesChoice.@Nullable Named species, boolean listed, String county,
		String countyName, boolean practice, Words words) {

	/**
	 * Of a tree as the API shows it.
	 * @param tree null where the asker may not see it now
	 */
	static AboutTree of(Api api, @Nullable JsonNode tree, String countyKey, Units units) {
		JsonNode county = api.get("/counties/{county}", countyKey);
		Words words = new Words(ZoneId.of(county.path("timeZone").asString("UTC")), units);
		String name = county.path("name").asString(countyKey);
		boolean practice = county.path("practice").asBoolean(false);
		if (tree == null) {
			return new AboutTree("", "", null, false, countyKey, name, practice, words);
		}
		JsonNode species = api.find("/species/{species}", tree.path("species").asString(""));
		boolean listed = tree.path("listed").asBoolean(false) && tree.path("accepted").asBoolean(false) && !practice;
		return new AboutTree(tree.path("id").asString(""), tree.path("tag").asString(""),
				(species != null) ? SpeciesChoice.Named.from(species) : null, listed, countyKey, name, practice, words);
	}

	/** Of the tree at an address, as whoever asks may see it. */
	static AboutTree of(Api api, String idOrTag, Units units) {
		JsonNode tree = api.get("/trees/{tree}", idOrTag);
		return of(api, tree, tree.path("county").asString(""), units);
	}

	/** The day of an instant, as the API writes it. */
	public String day(String instant) {
		return this.words.day(Instant.parse(instant));
	}

	/** A day, month or year as the API writes it. */
	public String known(String day) {
		return this.words.known(KnownDay.parse(day));
	}

}
