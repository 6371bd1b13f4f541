package county.bigtree.registry.pages.form;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * What the API answered, as templates read it: objects as maps, lists as lists, numbers
 * as decimals.
 */
public final class Plain {

	private Plain() {
	}

	/** An object; empty where it is none. */
	public static Map<String, @Nullable Object> map(JsonNode node) {
		Map<String, @Nullable Object> map = new LinkedHashMap<>();
		node.properties().forEach((entry) -> map.put(entry.getKey(), of(entry.getValue())));
		return map;
	}

	/** The items of a list, or of a page of one. */
	public static List<Map<String, @Nullable Object>> list(JsonNode node) {
		List<Map<String, @Nullable Object>> list = new ArrayList<>();
		(node.isArray() ? node : node.path("items")).forEach((item) -> list.add(map(item)));
		return list;
	}

	private static @Nullable Object of(JsonNode node) {
		if (node.isObject()) {
			return map(node);
		}
		if (node.isArray()) {
			List<@Nullable Object> list = new ArrayList<>();
			node.forEach((item) -> list.add(of(item)));
			return list;
		}
		if (node.isNumber()) {
			return node.decimalValue();
		}
		if (node.isBoolean()) {
			return node.booleanValue();
		}
		return node.isNull() || node.isMissingNode() ? null : node.asString();
	}

}
