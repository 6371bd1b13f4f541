package county.bigtree.registry.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Turns what the demo's files say relative to today and by short names into instants,
 * days and ids.
 */
class DemoStory {

	private final JsonMapper json;

	private final Instant now;

	private final Map<String, ZoneId> zones = new HashMap<>();

	private final Map<String, UUID> people = new HashMap<>();

	private final Map<String, UUID> things = new HashMap<>();

	DemoStory(JsonMapper json, Instant now) {
		this.json = json;
		this.now = now;
	}

	void county(String key, String zone) {
		this.zones.put(key, ZoneId.of(zone));
	}

	void person(String account, UUID id) {
		this.people.put(account, id);
	}

	UUID person(String account) {
		return found(this.people, account);
	}

	/**
	 * Remembers what an action brought under the name it gave.
	 */
	void remember(String kind, String name, UUID id) {
		this.things.put(kind + " " + name, id);
	}

	UUID recall(String kind, String name) {
		return found(this.things, kind + " " + name);
	}

	Instant instant(JsonNode action) {
		return instant(action, today(zone(action)));
	}

	/**
	 * When the action happens in a story told on the day.
	 */
	Instant instant(JsonNode action, LocalDate toldOn) {
		ZoneId zone = zone(action);
		return toldOn.minusDays(action.path("daysAgo").intValue())
			.atTime(LocalTime.parse(action.path("at").stringValue()))
			.atZone(zone)
			.toInstant();
	}

	/**
	 * The day on which a story was told, in which something is on a day so relative to
	 * it.
	 */
	static LocalDate toldOn(String relative, LocalDate day) {
		return day.minusDays(Long.parseLong(relative.substring(0, relative.length() - 1)));
	}

	Instant startOf(String relativeDay, ZoneId zone) {
		return LocalDate.parse(day(relativeDay, zone)).atTime(8, 0).atZone(zone).toInstant();
	}

	/**
	 * The body of an action with days, people and things put in.
	 */
	<T> T body(JsonNode action, Class<T> type) {
		return this.json.treeToValue(resolved(action.path("body"), zone(action)), type);
	}

	private ZoneId zone(JsonNode action) {
		return found(this.zones, action.path("county").stringValue());
	}

	private JsonNode resolved(JsonNode node, ZoneId zone) {
		if (node.isObject()) {
			ObjectNode object = this.json.createObjectNode();
			node.properties()
				.forEach((entry) -> object.set(entry.getKey(), named(entry.getKey(), entry.getValue(), zone)));
			return object;
		}
		if (node.isArray()) {
			ArrayNode array = this.json.createArrayNode();
			node.forEach((one) -> array.add(resolved(one, zone)));
			return array;
		}
		return node.isString() ? this.json.getNodeFactory().stringNode(word(node.stringValue(), zone)) : node;
	}

	private String word(String word, ZoneId zone) {
		if (word.matches("[+-]\\d+d")) {
			return day(word, zone);
		}
		return word.startsWith("@") ? found(this.things, word.substring(1)).toString() : word;
	}

	private JsonNode named(String field, JsonNode value, ZoneId zone) {
		boolean person = (field.equals("person") || field.equals("verifier")) && value.isString();
		return person ? this.json.getNodeFactory().stringNode(person(value.stringValue()).toString())
				: resolved(value, zone);
	}

	private String day(String relative, ZoneId zone) {
		return today(zone).plusDays(Long.parseLong(relative.substring(0, relative.length() - 1))).toString();
	}

	private LocalDate today(ZoneId zone) {
		return LocalDate.ofInstant(this.now, zone);
	}

	private static <T> T found(Map<String, T> map, String key) {
		T value = map.get(key);
		if (value == null) {
			throw new IllegalStateException("The demo story speaks of " + key + " before it is there");
		}
		return value;
	}

}
