package county.bigtree.registry.pages.filing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * The counties for which somebody files, by key.
 */
record OwnCounties(Map<String, JsonNode> byKey) {

	static OwnCounties of(Api api, Actor actor) {
		Map<String, JsonNode> counties = new LinkedHashMap<>();
		actor.roles().keySet().stream().sorted().filter((key) -> actor.is(Role.VOLUNTEER, key)).forEach((key) -> {
			JsonNode county = api.find("/counties/{county}", key);
			if (county != null) {
				counties.put(key, county);
			}
		});
		return new OwnCounties(counties);
	}

	List<String> keys() {
		return List.copyOf(this.byKey.keySet());
	}

	/** The names by which to choose. */
	Map<String, String> names() {
		Map<String, String> names = new LinkedHashMap<>();
		this.byKey.forEach((key, county) -> names.put(key, county.path("name").asString(key)));
		return names;
	}

	/** The only one, or that of the last filing. */
	@Nullable String proposed(Api api) {
		if (this.byKey.size() == 1) {
			return keys().get(0);
		}
		JsonNode last = api.get("/people/me/filings?limit={limit}", 1).path("items").path(0);
		String county = last.path("county").asString("");
		return this.byKey.containsKey(county) ? county : null;
	}

	/** The day in the first of them. */
	LocalDate today(Instant now) {
		String zone = this.byKey.values()
			.stream()
			.map((county) -> county.path("timeZone").asString("UTC"))
			.findFirst()
			.orElse("UTC");
		return LocalDate.ofInstant(now, ZoneId.of(zone));
	}

	/** Whether what is filed there is for practice. */
	boolean practice(String key) {
		JsonNode county = this.byKey.get(key);
		return county != null && county.path("practice").asBoolean(false);
	}

}
