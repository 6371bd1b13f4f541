package county.bigtree.registry.pages.office;

import java.util.ArrayList;
import java.util.List;

import tools.jackson.databind.JsonNode;

/**
 * Why a tree is shown as it is today, in the names of messages, from what the register
 * answers of it and of its owners.
 */
final class Shown {

	private Shown() {
	}

	/**
	 * The reasons, the weightiest first.
	 * @param tree as it is answered today
	 * @param owners all on record, those of former days included
	 */
	static List<String> why(JsonNode tree, JsonNode owners) {
		List<JsonNode> present = new ArrayList<>();
		owners.forEach((owner) -> {
			if (!owner.hasNonNull("endedAt")) {
				present.add(owner);
			}
		});
		if (!tree.path("listed").asBoolean(true)) {
			return List.of("owners.why.unlisted");
		}
		List<String> why = new ArrayList<>();
		why.add(present.isEmpty() ? "owners.why.nobody" : "owners.why.listed");
		if (!present.stream().allMatch((owner) -> consents(owner, "place"))) {
			why.add("owners.why.no-place");
		}
		why.add(tree.hasNonNull("position") ? "owners.why.position" : "owners.why.county");
		return why;
	}

	/** Whether this is the owner's word today. */
	static boolean consents(JsonNode owner, String purpose) {
		for (JsonNode said : owner.path("consents")) {
			if (said.path("purpose").asString("").equals(purpose) && said.path("holds").asBoolean(false)) {
				return true;
			}
		}
		return false;
	}

}
