package county.bigtree.registry.pages.office;

import java.util.ArrayList;
import java.util.List;

import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Words as they are kept, told plainly: several names, or an owner with how to reach
 * them, are kept together as JSON.
 */
final class KeptWords {

	private static final JsonMapper JSON = JsonMapper.shared();

	private KeptWords() {
	}

	/** What of it was written, with commas between; itself where it is one piece. */
	static String plainly(String kept) {
		if (!kept.startsWith("[") && !kept.startsWith("{")) {
			return kept;
		}
		try {
			List<String> written = new ArrayList<>();
			gather(JSON.readTree(kept), written);
			return written.isEmpty() ? kept : String.join(", ", written);
		}
		catch (JacksonException ex) {
			return kept;
		}
	}

	private static void gather(JsonNode node, List<String> written) {
		if (node.isString() && !node.asString().isBlank()) {
			written.add(node.asString());
		}
		node.forEach((part) -> gather(part, written));
	}

}
