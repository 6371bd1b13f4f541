package county.bigtree.registry.openness.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.openness.OpenDataSettings;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * Collections of features and single ones, with their links. Pages tell no timeStamp,
 * which the standard leaves open (17-069r4, 7.15.8): a page is the same to the byte, and
 * its entity tag holds, as long as nothing in it changed. The header Date says when it
 * was made.
 */
@Component
class FeatureAnswers {

	private static final String COLLECTIONS = "/ogc/collections/";

	private final FeatureLinks links;

	private final OpenDataSettings settings;

	FeatureAnswers(FeatureLinks links, OpenDataSettings settings) {
		this.links = links;
		this.settings = settings;
	}

	/**
	 * A page.
	 * @param matched how many there are on all pages, if they were counted
	 * @param next the cursor of the next page, if one follows
	 */
	Map<String, Object> page(String collection, List<Map<String, @Nullable Object>> features,
			Map<String, @Nullable Object> asked, @Nullable Integer matched, @Nullable String next) {
		String items = COLLECTIONS + collection + "/items";
		List<Map<String, String>> around = new ArrayList<>();
		around.add(this.links.link("self", FeatureLinks.GEO_JSON, "This page", FeatureLinks.path(items, asked)));
		if (next != null) {
			Map<String, @Nullable Object> further = new LinkedHashMap<>(asked);
			further.put("cursor", next);
			around.add(
					this.links.link("next", FeatureLinks.GEO_JSON, "The next page", FeatureLinks.path(items, further)));
		}
		around.add(collection(collection));
		addLicense(around);
		Map<String, Object> page = new LinkedHashMap<>();
		page.put("type", "FeatureCollection");
		if (matched != null) {
			page.put("numberMatched", matched);
		}
		page.put("numberReturned", features.size());
		page.put("links", around);
		page.put("features", features);
		return page;
	}

	/** One feature. */
	Map<String, @Nullable Object> one(String collection, Map<String, @Nullable Object> feature) {
		String path = COLLECTIONS + collection + "/items/" + feature.get("id");
		List<Map<String, String>> around = new ArrayList<>();
		around.add(this.links.link("self", FeatureLinks.GEO_JSON, "This feature", path));
		around.add(collection(collection));
		addLicense(around);
		Map<String, @Nullable Object> whole = new LinkedHashMap<>(feature);
		whole.put("links", around);
		return whole;
	}

	private Map<String, String> collection(String collection) {
		return this.links.link("collection", FeatureLinks.JSON, "The collection", COLLECTIONS + collection);
	}

	void addLicense(List<Map<String, String>> around) {
		String license = this.settings.license();
		if (license != null) {
			around.add(Map.of("href", license, "rel", "license", "title", "The licence of the data"));
		}
	}

}
