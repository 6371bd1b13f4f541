package county.bigtree.registry.openness.web;

import java.util.LinkedHashMap;
import java.util.Map;

import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.web.util.UriComponentsBuilder;

/**
 * Links as OGC API - Features writes them (RFC 8288 in JSON).
 */
@Component
class FeatureLinks {

	static final String JSON = "application/json";

	static final String GEO_JSON = "application/geo+json";

	static final String OPEN_API = "application/vnd.oai.openapi+json;version=3.0";

	private final OpenAddresses addresses;

	FeatureLinks(OpenAddresses addresses) {
		this.addresses = addresses;
	}

	Map<String, String> link(String rel, String type, String title, String path) {
		Map<String, String> link = new LinkedHashMap<>();
		link.put("href", this.addresses.of(path));
		link.put("rel", rel);
		link.put("type", type);
		link.put("title", title);
		return link;
	}

	/** A path with those parameters that are given. */
	static String path(String path, Map<String, ? extends @Nullable Object> parameters) {
		UriComponentsBuilder builder = UriComponentsBuilder.fromPath(path);
		Map<String, Object> values = new LinkedHashMap<>();
		parameters.forEach((name, value) -> {
			if (value != null) {
				builder.queryParam(name, "{" + name + "}");
				values.put(name, value);
			}
		});
		return builder.encode().buildAndExpand(values).toUriString();
	}

}
