package county.bigtree.registry.earlier;

import java.util.List;
import java.util.Map;

import tools.jackson.databind.JsonNode;

/**
 * Whether all that an earlier release told in an answer is told alike: what was added to
 * answers since is passed over, and so are titles that began, or ended, since.
 *
 * @param differences takes each as a sentence
 */
record ToldAlike(List<String> differences) {

	private static final String TO = "to";

	/** Compares answers to a question about a past day as known at a past instant. */
	void compare(String where, JsonNode then, JsonNode now) {
		if (then.isObject()) {
			for (Map.Entry<String, JsonNode> field : then.properties()) {
				compare(where + " " + field.getKey(), field.getValue(), now.path(field.getKey()));
			}
		}
		else if (then.isArray()) {
			if (then.size() != now.size()) {
				this.differences.add("%s: had %d entries, has %d".formatted(where, then.size(), now.size()));
				return;
			}
			for (int i = 0; i < then.size(); i++) {
				compare(where + " " + i, then.get(i), now.get(i));
			}
		}
		else if (then.isNumber() && now.isNumber() ? then.decimalValue().compareTo(now.decimalValue()) != 0
				: !then.equals(now)) {
			this.differences.add("%s: was %s, is %s".formatted(where, then, now));
		}
	}

	/**
	 * Compares the titles of a book, newest first: those that have begun since stand
	 * before the others.
	 */
	void compareTitles(String where, JsonNode then, JsonNode now) {
		int since = now.size() - then.size();
		if (since < 0) {
			this.differences.add("%s: had %d titles, has %d".formatted(where, then.size(), now.size()));
			return;
		}
		for (int i = 0; i < then.size(); i++) {
			JsonNode title = now.get(since + i);
			for (Map.Entry<String, JsonNode> field : then.get(i).properties()) {
				boolean open = then.get(i).path(TO).isNull();
				if (!open || !(field.getKey().equals(TO) || field.getKey().equals("ended"))) {
					compare(where + " " + i + " " + field.getKey(), field.getValue(), title.path(field.getKey()));
				}
			}
		}
	}

}
