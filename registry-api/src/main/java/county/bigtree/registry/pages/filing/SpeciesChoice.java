package county.bigtree.registry.pages.filing;

import java.util.List;
import java.util.stream.StreamSupport;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * The species that a form names: typed as people call it, then chosen among those that
 * the register knows by that name.
 *
 * @param chosen null until one is
 * @param found to choose from
 */
public record SpeciesChoice(@Nullable Named chosen, List<Named> found) {

	static final String NAME = "speciesName";

	static final String KEY = "species";

	/** The name for which the choice was shown. */
	static final String SHOWN_FOR = "speciesFor";

	private static final int OFFERED = 6;

	/**
	 * Finds what is meant and fills the form's fields. A name that was typed anew does
	 * away with an earlier choice.
	 */
	static SpeciesChoice of(Api api, Form form) {
		String name = form.value(NAME);
		if (name.isEmpty() && form.isFilled(KEY)) {
			return byKey(api, form);
		}
		boolean same = name.equals(form.value(SHOWN_FOR));
		form.put(SHOWN_FOR, name);
		List<Named> found = name.isEmpty() ? List.of() : search(api, name);
		String key = same ? form.value(KEY) : exact(found, name);
		Named chosen = found.stream().filter((one) -> one.key().equals(key)).findFirst().orElse(null);
		form.put(KEY, (chosen != null) ? chosen.key() : null);
		return new SpeciesChoice(chosen, found);
	}

	/** As an address names it. */
	private static SpeciesChoice byKey(Api api, Form form) {
		JsonNode json = api.find("/species/{species}", form.value(KEY));
		Named chosen = (json != null) ? Named.from(json) : null;
		String name = (chosen != null) ? chosen.commonName() : null;
		form.put(KEY, (chosen != null) ? chosen.key() : null).put(NAME, name).put(SHOWN_FOR, name);
		return new SpeciesChoice(chosen, (chosen != null) ? List.of(chosen) : List.of());
	}

	private static List<Named> search(Api api, String name) {
		String query = (name.length() > 100) ? name.substring(0, 100) : name;
		JsonNode items = api.get("/species?query={query}&limit={limit}", query, OFFERED).path("items");
		return StreamSupport.stream(items.spliterator(), false).map(Named::from).toList();
	}

	/**
	 * The only one that is called so; empty where there is none, or several are. A genus
	 * is taken by choice alone.
	 */
	private static String exact(List<Named> found, String name) {
		List<Named> called = found.stream().filter((one) -> one.rankable() && one.isCalled(name)).toList();
		return (called.size() == 1) ? called.get(0).key() : "";
	}

	/**
	 * A species by its names.
	 *
	 * @param rankable false for a genus alone
	 */
	public record Named(String key, String commonName, String scientificName, boolean rankable) {

		static Named from(JsonNode json) {
			return new Named(json.path("key").asString(""), json.path("commonName").asString(""),
					json.path("scientificName").asString(""), json.path("rankable").asBoolean(true));
		}

		boolean isCalled(String name) {
			return name.equalsIgnoreCase(this.commonName) || name.equalsIgnoreCase(this.scientificName)
					|| name.equals(this.key);
		}

	}

}
