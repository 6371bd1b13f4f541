package county.bigtree.registry.security;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.util.RawValue;

/**
 * Makes bodies that are nearly right: a good one with some of its values replaced, left
 * out, doubled or added, as bytes that may be no JSON at all.
 */
final class OddJson {

	private static final int DEEP = 3000;

	private static final int MANY = 2000;

	private static final int TOO_MUCH = (1 << 20) + 1;

	private final JsonMapper json;

	private final Random random;

	OddJson(JsonMapper json, Random random) {
		this.json = json;
		this.random = random;
	}

	byte[] bytes(ObjectNode good) {
		ObjectNode body = good.deepCopy();
		int changes = this.random.nextInt(4);
		for (int count = 0; count < changes; count++) {
			change(body);
		}
		String text = this.json.writeValueAsString(body);
		return (this.random.nextInt(8) == 0) ? broken(text) : text.getBytes(StandardCharsets.UTF_8);
	}

	private void change(ObjectNode body) {
		List<JsonNode> containers = new ArrayList<>();
		collect(body, containers);
		JsonNode chosen = containers.get(this.random.nextInt(containers.size()));
		if (chosen instanceof ObjectNode object) {
			changeField(object);
		}
		else if (chosen instanceof ArrayNode array) {
			changeItems(array);
		}
	}

	private static void collect(JsonNode node, List<JsonNode> containers) {
		if (node.isContainer()) {
			containers.add(node);
			node.forEach((child) -> collect(child, containers));
		}
	}

	private void changeField(ObjectNode object) {
		List<String> names = new ArrayList<>(object.propertyNames());
		String name = (names.isEmpty() || this.random.nextInt(12) == 0) ? "unheardOf"
				: names.get(this.random.nextInt(names.size()));
		if (this.random.nextInt(6) == 0) {
			object.remove(name);
		}
		else {
			object.set(name, odd(object.path(name)));
		}
	}

	private void changeItems(ArrayNode array) {
		switch (this.random.nextInt(4)) {
			case 0 -> array.removeAll();
			case 1 -> array.add(odd(array.deepCopy()));
			case 2 -> array.addNull();
			default -> {
				JsonNode item = array.isEmpty() ? this.json.getNodeFactory().numberNode(1) : array.get(0);
				for (int count = 0; count < MANY; count++) {
					array.add(item);
				}
			}
		}
	}

	/** Mostly of the same kind as it was, so that it gets past the first look. */
	private JsonNode odd(JsonNode was) {
		return switch (this.random.nextInt(10)) {
			case 0 -> this.json.getNodeFactory().nullNode();
			case 1 -> this.json.getNodeFactory().booleanNode(this.random.nextBoolean());
			case 2 -> this.json.createObjectNode().put("a", 1);
			case 3 -> this.json.createArrayNode().add(was.deepCopy());
			case 4 -> was.isNumber() ? text() : number();
			default -> was.isNumber() ? number() : text();
		};
	}

	private JsonNode number() {
		return this.json.getNodeFactory().rawValueNode(new RawValue(OddText.number(this.random)));
	}

	private JsonNode text() {
		return this.json.getNodeFactory().stringNode(OddText.text(this.random).replaceAll("[\ud800-\udfff]", "?"));
	}

	private byte[] broken(String text) {
		return switch (this.random.nextInt(10)) {
			case 0 -> text.substring(0, this.random.nextInt(text.length())).getBytes(StandardCharsets.UTF_8);
			case 1 -> (text + "x").getBytes(StandardCharsets.UTF_8);
			case 2 -> (text.substring(0, text.length() - 1) + ",\"a\":\"\u00e4\u00ff\"}")
				.getBytes(StandardCharsets.ISO_8859_1);
			case 3 -> ("[".repeat(DEEP) + "]".repeat(DEEP)).getBytes(StandardCharsets.UTF_8);
			case 4 -> (text.substring(0, text.length() - 1) + ",\"reason\":" + "{\"a\":".repeat(DEEP) + "1"
					+ "}".repeat(DEEP) + "}")
				.getBytes(StandardCharsets.UTF_8);
			case 5 -> (text + text).getBytes(StandardCharsets.UTF_8);
			case 6 -> new byte[0];
			case 7 -> List.of("null", "[]", "1", "\"x\"", "true", "{", "{}", "{\"reason\":\"\\ud800\"}", "\u0000", "//")
				.get(this.random.nextInt(10))
				.getBytes(StandardCharsets.UTF_8);
			case 8 -> (text.substring(0, text.length() - 1) + "," + text.substring(1)).getBytes(StandardCharsets.UTF_8);
			default -> (this.random.nextInt(4) == 0) ? new byte[TOO_MUCH] : random();
		};
	}

	private byte[] random() {
		byte[] bytes = new byte[this.random.nextInt(200)];
		this.random.nextBytes(bytes);
		return bytes;
	}

}
