package county.bigtree.registry.openness.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Hidden;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * What the features are and how they are asked for (OGC API - Features - Part 1: Core,
 * 17-069r4, 7.2 to 7.14).
 */
@RestController
@Hidden
class FeatureServiceController {

	private static final String CONFORMANCE = "http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/";

	private static final String CRS84 = "http://www.opengis.net/def/crs/OGC/1.3/CRS84";

	private static final String GREGORIAN = "http://www.opengis.net/def/uom/ISO-8601/0/Gregorian";

	private static final Map<String, String> COLLECTIONS = collections();

	private final FeatureLinks links;

	private final FeatureAnswers answers;

	private final OpenAddresses addresses;

	private final JsonMapper json;

	FeatureServiceController(FeatureLinks links, FeatureAnswers answers, OpenAddresses addresses, JsonMapper json) {
		this.links = links;
		this.answers = answers;
		this.addresses = addresses;
		this.json = json;
	}

	private static Map<String, String> collections() {
		Map<String, String> collections = new LinkedHashMap<>();
		collections.put("trees", "Trees on the books of the counties as they are shown today: where a tree is shown "
				+ "by a grid of about a kilometre, its point is the middle of its cell; where only its county is "
				+ "shown, it has none.");
		collections.put("titles", "Titles as they were recognised, each over the time for which it was held. A tree "
				+ "that is not shown at its owner's wish keeps its titles, without what leads to it.");
		return collections;
	}

	@GetMapping(path = "/ogc", produces = FeatureLinks.JSON)
	@Access(Who.ANYONE)
	Map<String, Object> landing() {
		List<Map<String, String>> around = new ArrayList<>();
		around.add(this.links.link("self", FeatureLinks.JSON, "This page", "/ogc"));
		around.add(this.links.link("service-desc", FeatureLinks.OPEN_API, "The description of the API", "/ogc/api"));
		around.add(this.links.link("conformance", FeatureLinks.JSON, "What it conforms to", "/ogc/conformance"));
		around.add(this.links.link("data", FeatureLinks.JSON, "The collections", "/ogc/collections"));
		this.answers.addLicense(around);
		Map<String, Object> landing = new LinkedHashMap<>();
		landing.put("title", "County big-tree registry");
		landing.put("description", "The largest trees of each species, and the titles they hold, county by county.");
		landing.put("links", around);
		return landing;
	}

	@GetMapping(path = "/ogc/conformance", produces = FeatureLinks.JSON)
	@Access(Who.ANYONE)
	Map<String, Object> conformance() {
		return Map.of("conformsTo", List.of(CONFORMANCE + "core", CONFORMANCE + "geojson", CONFORMANCE + "oas30"));
	}

	/** OpenAPI 3.0, kept as a resource but for where the service stands. */
	@GetMapping(path = "/ogc/api")
	@Access(Who.ANYONE)
	ResponseEntity<byte[]> description() throws IOException {
		try (InputStream resource = FeatureServiceController.class.getResourceAsStream("/ogc/openapi.json")) {
			if (resource == null) {
				throw new IllegalStateException("The description of the features is missing");
			}
			ObjectNode api = (ObjectNode) this.json.readTree(resource);
			api.putArray("servers").addObject().put("url", this.addresses.of("/"));
			return ResponseEntity.ok()
				.contentType(MediaType.parseMediaType(FeatureLinks.OPEN_API))
				.body(this.json.writeValueAsBytes(api));
		}
	}

	@GetMapping(path = "/ogc/collections", produces = FeatureLinks.JSON)
	@Access(Who.ANYONE)
	Map<String, Object> list() {
		Map<String, Object> all = new LinkedHashMap<>();
		all.put("links", List.of(this.links.link("self", FeatureLinks.JSON, "These collections", "/ogc/collections")));
		all.put("collections", COLLECTIONS.keySet().stream().map(this::collection).toList());
		return all;
	}

	@GetMapping(path = "/ogc/collections/{collection}", produces = FeatureLinks.JSON)
	@Access(Who.ANYONE)
	Map<String, Object> get(@PathVariable String collection) {
		if (!COLLECTIONS.containsKey(collection)) {
			throw Problem.notFound("The collections are trees and titles.");
		}
		return collection(collection);
	}

	private Map<String, Object> collection(String id) {
		String path = "/ogc/collections/" + id;
		List<Map<String, String>> around = new ArrayList<>();
		around.add(this.links.link("self", FeatureLinks.JSON, "This collection", path));
		around.add(this.links.link("items", FeatureLinks.GEO_JSON, "The features", path + "/items"));
		this.answers.addLicense(around);
		Map<String, Object> collection = new LinkedHashMap<>();
		collection.put("id", id);
		collection.put("title", id.equals("trees") ? "Trees" : "Titles");
		collection.put("description", String.valueOf(COLLECTIONS.get(id)));
		collection.put("itemType", "feature");
		collection.put("crs", List.of(CRS84));
		collection.put("extent", extent());
		collection.put("links", around);
		return collection;
	}

	/**
	 * Where the trees of the counties are and when they were measured is not told ahead.
	 */
	private static Map<String, Object> extent() {
		List<Object> always = new ArrayList<>();
		always.add(null);
		always.add(null);
		return Map.of("spatial", Map.of("bbox", List.of(List.of(-180, -90, 180, 90)), "crs", CRS84), "temporal",
				Map.of("interval", List.of(always), "trs", GREGORIAN));
	}

}
