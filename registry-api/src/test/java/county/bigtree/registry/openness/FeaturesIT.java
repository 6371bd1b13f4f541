package county.bigtree.registry.openness;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.openness.TestOpenCounty.One;
import county.bigtree.registry.openness.TestOpenCounty.Planted;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * The features by the requirements of OGC API - Features - Part 1: Core (17-069r4), and
 * as GDAL reads them.
 */
@RegistryTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FeaturesIT {

	private static final String COUNTY = "featureland";

	private static final String TREES = "/ogc/collections/trees/items?county=" + COUNTY;

	private static final String TITLES = "/ogc/collections/titles/items?county=" + COUNTY;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestOpenCounty counties;

	@Autowired
	private JsonMapper json;

	@LocalServerPort
	private int port;

	@SuppressWarnings("NullAway.Init")
	private Planted planted;

	@BeforeAll
	void plant() throws Exception {
		this.planted = this.counties.found(COUNTY, "FEA");
	}

	@Test
	void theLandingPageLeadsEverywhere() throws Exception {
		JsonNode landing = read("/ogc");
		assertThat(rels(landing)).contains("self", "service-desc", "conformance", "data");
		for (JsonNode link : landing.path("links")) {
			this.mvc.perform(get(path(link))).andExpect(status().isOk());
		}
		JsonNode collections = read("/ogc/collections");
		assertThat(rels(collections)).contains("self");
		assertThat(texts(collections.path("collections"), "id")).containsExactly("trees", "titles");
		for (JsonNode collection : collections.path("collections")) {
			assertThat(rels(collection)).contains("self", "items");
			for (JsonNode link : collection.path("links")) {
				this.mvc.perform(get(path(link))).andExpect(status().isOk());
			}
			assertThat(read("/ogc/collections/" + collection.path("id").stringValue(""))).isEqualTo(collection);
		}
		this.mvc.perform(get("/ogc/collections/shrubs")).andExpect(status().isNotFound());
	}

	@Test
	void conformsToWhatItSaysAndDescribesEveryAddress() throws Exception {
		assertThat(read("/ogc/conformance").toString())
			.isEqualTo("{\"conformsTo\":[\"http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/core\","
					+ "\"http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/geojson\","
					+ "\"http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/oas30\"]}");
		JsonNode api = read("/ogc/api");
		this.mvc.perform(get("/ogc/api"))
			.andExpect(content().contentType("application/vnd.oai.openapi+json;version=3.0"));
		assertThat(api.path("openapi").stringValue("")).startsWith("3.0");
		String title = features(read(TITLES)).get(0).path("id").stringValue("");
		for (String path : api.path("paths").propertyNames()) {
			String address = path.replace("{collection}", "trees")
				.replace("{tree}", this.planted.exact().id())
				.replace("{title}", title);
			this.mvc.perform(get(address)).andExpect(status().isOk());
		}
		for (JsonNode reference : api.findValues("$ref")) {
			assertThat(api.at(reference.stringValue("").substring(1)).isMissingNode()).as(reference.toString())
				.isFalse();
		}
	}

	/** RFC 9110, 13.1.2. */
	@Test
	void whoHasAPageIsToldSoAsLongAsNothingChanges() throws Exception {
		String one = "/ogc/collections/trees/items/" + this.planted.exact().id();
		Map<String, String> held = new LinkedHashMap<>();
		for (String address : List.of(TREES, TREES + "&limit=2", TITLES, one)) {
			held.put(address,
					String.valueOf(this.mvc.perform(get(address))
						.andExpect(status().isOk())
						.andReturn()
						.getResponse()
						.getHeader(HttpHeaders.ETAG)));
		}
		// Long enough for any time in the answers to be another.
		Thread.sleep(1100);
		for (Map.Entry<String, String> page : held.entrySet()) {
			this.mvc.perform(get(page.getKey()).header(HttpHeaders.IF_NONE_MATCH, page.getValue()))
				.andExpect(status().isNotModified())
				.andExpect(content().string(""));
		}
	}

	@Test
	void givesTheListedTreesAsFeatures() throws Exception {
		JsonNode page = read(TREES);
		this.mvc.perform(get(TREES)).andExpect(content().contentTypeCompatibleWith("application/geo+json"));
		this.mvc.perform(get(TREES).accept(MediaType.APPLICATION_JSON))
			.andExpect(content().contentTypeCompatibleWith(MediaType.APPLICATION_JSON));
		assertThat(page.path("type").stringValue("")).isEqualTo("FeatureCollection");
		assertThat(page.path("numberMatched").asInt()).isEqualTo(3);
		assertThat(page.path("numberReturned").asInt()).isEqualTo(3);
		assertThat(page.has("timeStamp")).as("which would make no two answers alike").isFalse();
		assertThat(rels(page)).contains("self").doesNotContain("next");
		assertThat(tags(page)).containsExactly(this.planted.exact().tag(), this.planted.nearby().tag(),
				this.planted.countyOnly().tag());
		JsonNode one = read("/ogc/collections/trees/items/" + this.planted.nearby().id());
		assertThat(one.path("properties")).isEqualTo(features(page).get(1).path("properties"));
		assertThat(rels(one)).contains("self", "collection");
	}

	@Test
	void pagesAreFollowedByTheirLinksAndHoldEachTreeOnce() throws Exception {
		List<String> seen = new ArrayList<>();
		JsonNode page = read(TREES + "&limit=2");
		seen.addAll(tags(page));
		assertThat(page.path("numberReturned").asInt()).isEqualTo(2);
		while (rels(page).contains("next")) {
			page = read(path(link(page, "next")));
			assertThat(page.path("numberMatched").asInt()).isEqualTo(3);
			seen.addAll(tags(page));
		}
		assertThat(seen).containsExactly(this.planted.exact().tag(), this.planted.nearby().tag(),
				this.planted.countyOnly().tag());
		assertThat(read(TREES + "&limit=999999").path("numberReturned").asInt()).isEqualTo(3);
	}

	@Test
	void aBoxIsHeldAgainstThePlaceAsShown() throws Exception {
		String around = "-86.24,40.12,-86.23,40.13";
		assertThat(tags(read(TREES + "&bbox=" + around))).contains(this.planted.exact().tag())
			.doesNotContain(this.planted.countyOnly().tag());
		// The place itself, some metres around
		assertThat(tags(read(TREES + "&bbox=-86.2346,40.1234,-86.2345,40.1235")))
			.containsExactly(this.planted.exact().tag());
		JsonNode nearby = read("/ogc/collections/trees/items/" + this.planted.nearby().id())
			.at("/geometry/coordinates");
		double x = nearby.get(0).asDouble();
		double y = nearby.get(1).asDouble();
		String middle = "%.4f,%.4f,%.4f,%.4f".formatted(x - 0.0002, y - 0.0002, x + 0.0002, y + 0.0002);
		assertThat(tags(read(TREES + "&bbox=" + middle))).containsExactly(this.planted.nearby().tag());
		assertThat(tags(read(TREES + "&bbox=-86.24,40.12,0,-86.23,40.13,9000"))).isNotEmpty();
	}

	@Test
	void aBoxMayCrossTheDateLine() throws Exception {
		assertThat(tags(read(TREES + "&bbox=170,0,-80,60"))).containsExactly(this.planted.exact().tag(),
				this.planted.nearby().tag());
		assertThat(tags(read(TREES + "&bbox=170,0,-100,60"))).isEmpty();
	}

	@Test
	void datesAreHeldAgainstTheDayOfMeasuring() throws Exception {
		for (String within : List.of("2024-05-02", "2024-05-02T12:00:00Z", "2024-05-01/2024-05-03", "../2024-05-02",
				"2024-05-02/..", "2024-05-02/", "/2024-05-02", "2024-05-02T00:00:00Z/2024-05-02T23:00:00-05:00")) {
			assertThat(tags(read(TREES + "&datetime=" + within))).as(within).hasSize(3);
		}
		for (String beside : List.of("2024-05-03", "../2024-05-01", "2024-05-03/..")) {
			assertThat(tags(read(TREES + "&datetime=" + beside))).as(beside).isEmpty();
		}
	}

	@Test
	void propertiesFilter() throws Exception {
		assertThat(tags(read(TREES + "&species=quercus-alba&condition=upright"))).hasSize(3);
		assertThat(tags(read(TREES + "&condition=fallen"))).isEmpty();
		assertThat(tags(read(TREES + "&species=acer-rubrum"))).isEmpty();
		assertThat(tags(read(TREES + "&title=champion"))).as("its champion is not listed").isEmpty();
		assertThat(tags(read(TREES + "&tag=" + this.planted.nearby().tag())))
			.containsExactly(this.planted.nearby().tag());
		assertThat(tags(read(TREES + "&tag=" + this.planted.unlisted().tag()))).isEmpty();
	}

	@Test
	void refusesWhatItCannotRead() throws Exception {
		for (String wrong : List.of("bbx=1,2,3,4", "bbox=1,2,3", "bbox=1,2,3,x", "bbox=0,50,1,40", "bbox=-181,0,0,1",
				"bbox=0,0,1,91", "bbox=", "limit=0", "limit=-1", "limit=many", "datetime=yesterday",
				"datetime=2024-05-03/2024-05-02", "datetime=a/b/c", "cursor=beginning", "crs=any")) {
			this.mvc.perform(get(TREES + "&" + wrong).accept(MediaType.TEXT_HTML, MediaType.ALL))
				.andExpect(status().isBadRequest())
				.andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON));
			this.mvc.perform(get(TITLES + "&" + wrong)).andExpect(status().isBadRequest());
		}
		this.mvc.perform(get(TITLES + "&condition=upright")).andExpect(status().isBadRequest());
		this.mvc.perform(get("/ogc?f=html")).andExpect(status().isBadRequest());
	}

	@Test
	void titlesLastOverTheirSpansAndSayNothingOfATreeThatIsNotListed() throws Exception {
		JsonNode page = read(TITLES);
		assertThat(page.path("numberMatched").asInt()).isEqualTo(1);
		JsonNode title = features(page).get(0);
		assertThat(title.path("geometry").isNull()).isTrue();
		assertThat(title.at("/properties/listed").asBoolean()).isFalse();
		assertThat(title.at("/properties/tag").isNull()).isTrue();
		assertThat(title.at("/properties/points").asDouble()).isEqualTo(230);
		assertThat(title.at("/properties/to").isNull()).isTrue();
		assertThat(read("/ogc/collections/titles/items/" + title.path("id").stringValue("")).path("properties"))
			.isEqualTo(title.path("properties"));
		assertThat(features(read(TITLES + "&datetime=../2024-05-02"))).isEmpty();
		String from = title.at("/properties/from").stringValue("");
		assertThat(features(read(TITLES + "&datetime=" + from + "/.."))).hasSize(1);
		One hidden = this.planted.unlisted();
		assertThat(features(read(TITLES + "&tag=" + hidden.tag()))).isEmpty();
		assertThat(features(read(TITLES + "&bbox=-180,-90,180,90"))).isEmpty();
		this.mvc.perform(get("/ogc/collections/trees/items/" + hidden.id())).andExpect(status().isNotFound());
		for (String address : List.of(TREES, TITLES, "/ogc/collections/trees/items?limit=1000")) {
			assertThat(this.counties.read(address)).doesNotContain(hidden.id(), hidden.tag(), "Measurer", "Landholder");
		}
		assertThat(this.counties.read(TREES).split(TestOpenCounty.EXACT_LATITUDE, -1)).hasSize(2);
	}

	@Test
	void countiesForPracticeHaveNoFeatures() throws Exception {
		this.trees.practiceCounty("featurepractice", "FEP");
		TestTrees.Filed tree = this.trees.standing("featurepractice", 150, "2024-05-02");
		assertThat(features(read("/ogc/collections/trees/items?county=featurepractice"))).isEmpty();
		assertThat(features(read("/ogc/collections/titles/items?county=featurepractice"))).isEmpty();
		this.mvc.perform(get("/ogc/collections/trees/items/" + tree.tree())).andExpect(status().isNotFound());
	}

	@Test
	void gdalListsTheTreesOfABox() throws Exception {
		String service = "OAPIF:http://127.0.0.1:" + this.port + "/ogc";
		assertThat(Gdal.run("ogrinfo", "-ro", service)).contains("trees", "titles");
		String said = Gdal.run("ogrinfo", "-ro", "-al", service, "trees", "-spat", "-86.2346", "40.1234", "-86.2345",
				"40.1235", "-oo", "PAGE_SIZE=1");
		assertThat(said).contains("tag (String) = " + this.planted.exact().tag(), "POINT (-86.234567 40.123457)")
			.doesNotContain(this.planted.nearby().tag(), this.planted.unlisted().tag());
	}

	private JsonNode read(String address) throws Exception {
		return this.json.readTree(this.mvc.perform(get(address))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString());
	}

	private static List<JsonNode> features(JsonNode page) {
		List<JsonNode> features = new ArrayList<>();
		page.path("features").forEach(features::add);
		return features;
	}

	private static List<String> tags(JsonNode page) {
		return features(page).stream().map((feature) -> feature.at("/properties/tag").stringValue("")).toList();
	}

	private static List<String> texts(JsonNode list, String name) {
		List<String> texts = new ArrayList<>();
		list.forEach((one) -> texts.add(one.path(name).stringValue("")));
		return texts;
	}

	private static Set<String> rels(JsonNode linked) {
		return new LinkedHashSet<>(texts(linked.path("links"), "rel"));
	}

	private static JsonNode link(JsonNode linked, String rel) {
		for (JsonNode link : linked.path("links")) {
			if (link.path("rel").stringValue("").equals(rel)) {
				return link;
			}
		}
		throw new AssertionError("no link " + rel);
	}

	/** MockMvc answers for http://localhost. */
	private static String path(JsonNode link) {
		String address = link.path("href").stringValue("");
		assertThat(address).startsWith("http://localhost/");
		return address.substring("http://localhost".length());
	}

}
