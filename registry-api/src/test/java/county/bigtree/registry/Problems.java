package county.bigtree.registry;

import org.springframework.test.json.JsonCompareMode;
import org.springframework.test.web.servlet.ResultMatcher;

import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;

/**
 * Holds an answer against the whole of a problem but for the name of the request, which
 * must be that of the header.
 */
public final class Problems {

	private Problems() {
	}

	public static ResultMatcher problem(String json) {
		return (result) -> {
			String named = "{\"request\": \"%s\", ".formatted(result.getResponse().getHeader("Request-Id"));
			content().json(json.strip().replaceFirst("\\{", named), JsonCompareMode.STRICT).match(result);
		};
	}

}
