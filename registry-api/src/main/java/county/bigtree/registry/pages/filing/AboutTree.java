package county.bigtree.registry.pages.filing;

import java.util.Locale;

import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Words;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * The tree that a page tells of, and its county's way of writing days.
 *
 * @param listed whether it has a page that all may see
 * @param county its key
 */
public record AboutTree(String id, String tag, SpeciesChoice.@Nullable Named species, boolean listed, String county,
		String countyName, boolean practice, Days days) {

	/** The field of a form that names a tree. */
	static final String FIELD = "tree";

	/**
	 * Of a tree as the API shows it.
	 * @param tree null where the asker may not see it now
	 */
	static AboutTree of(Api api, @Nullable JsonNode tree, String countyKey, Units units) {
		JsonNode county = api.get("/counties/{county}", countyKey);
		Days days = Days.of(county, units);
		String name = county.path("name").asString(countyKey);
		boolean practice = county.path("practice").asBoolean(false);
		if (tree == null) {
			return new AboutTree("", "", null, false, countyKey, name, practice, days);
		}
		JsonNode species = api.find("/species/{species}", tree.path("species").asString(""));
		boolean listed = tree.path("listed").asBoolean(false) && tree.path("accepted").asBoolean(false) && !practice;
		return new AboutTree(tree.path("id").asString(""), tree.path("tag").asString(""),
				(species != null) ? SpeciesChoice.Named.from(species) : null, listed, countyKey, name, practice, days);
	}

	/** Of the tree at an address, as whoever asks may see it. */
	static AboutTree of(Api api, String idOrTag, Units units) {
		JsonNode tree = api.get("/trees/{tree}", idOrTag);
		return of(api, tree, tree.path("county").asString(""), units);
	}

	/**
	 * Of the tree that a form names by its tag; null, and noted, where there is none to
	 * be seen.
	 */
	static @Nullable AboutTree named(Api api, Form form, FilingWords words, Units units) {
		String tag = form.value(FIELD).toUpperCase(Locale.ROOT);
		JsonNode tree = tag.isEmpty() ? null : api.find("/trees/{tree}", tag);
		if (tree == null) {
			form.refuse(FIELD, words.get(tag.isEmpty() ? "filing.tree.missing" : "filing.tree.unknown"));
			return null;
		}
		return of(api, tree, tree.path("county").asString(""), units);
	}

	/** How its county writes days, and the reader figures. */
	Words words() {
		return this.days.words();
	}

}
