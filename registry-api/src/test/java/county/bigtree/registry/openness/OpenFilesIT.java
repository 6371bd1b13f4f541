package county.bigtree.registry.openness;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.openness.TestOpenCounty.One;
import county.bigtree.registry.openness.TestOpenCounty.Planted;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.geojson.GeoJsonReader;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A county's files, read back by Commons CSV, the JTS Topology Suite and GDAL.
 */
@RegistryTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class OpenFilesIT {

	private static final String COUNTY = "openfiles";

	private static final List<String> FILES = List.of("standings.csv", "trees.csv", "scores.csv", "trees.geojson");

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestOpenCounty counties;

	@Autowired
	private JsonMapper json;

	@SuppressWarnings("NullAway.Init")
	private Planted planted;

	@BeforeAll
	void plant() throws Exception {
		this.planted = this.counties.found(COUNTY, "OPF");
	}

	@Test
	void theStandingsKeepTheLineOfATreeThatIsNotListed() throws Exception {
		List<CSVRecord> lines = csv("standings.csv");
		assertThat(column(lines, "rank")).containsExactly("1", "2", "3", "4");
		assertThat(column(lines, "tag")).containsExactly("", this.planted.exact().tag(), this.planted.nearby().tag(),
				this.planted.countyOnly().tag());
		assertThat(column(lines, "listed")).containsExactly("false", "true", "true", "true");
		assertThat(column(lines, "title")).containsExactly("champion", "", "", "");
		// 140 in + 80 ft + 40 ft / 4, and so on
		assertThat(column(lines, "points")).containsExactly("230.00", "220.00", "210.00", "200.00");
		assertThat(column(lines, "scientificName")).containsOnly("Quercus alba");
		assertThat(column(lines, "measuredOn")).containsOnly("2024-05-02");
	}

	@Test
	void theStandingsOfAPastDayAreThoseOfThatDay() throws Exception {
		assertThat(csv("standings.csv?asOf=2024-05-01")).isEmpty();
		List<CSVRecord> then = csv("standings.csv?asOf=2024-05-02");
		assertThat(column(then, "asOf")).hasSize(4).containsOnly("2024-05-02");
		for (String before : List.of("/exports/%s/standings.csv?knownAt=2024-05-03",
				"/api/v1/counties/%s/species/quercus-alba/standing?knownAt=2024-05-03")) {
			this.mvc.perform(get(before.formatted(COUNTY)))
				.andExpect(status().isUnprocessableContent())
				.andExpect(content().string(containsString("before the county was founded")));
		}
		this.mvc.perform(get("/exports/" + COUNTY + "/standings.csv?asof=2024-05-02"))
			.andExpect(status().isBadRequest())
			.andExpect(content().string(containsString("asOf, knownAt")));
		this.mvc.perform(get("/exports/" + COUNTY + "/standings.csv?asOf=2999-01-01"))
			.andExpect(status().isUnprocessableContent());
	}

	@Test
	void theTreesAreShownAsTheirOwnersAndTheCountyShowThem() throws Exception {
		List<CSVRecord> lines = csv("trees.csv");
		assertThat(column(lines, "tag")).containsExactly(this.planted.exact().tag(), this.planted.nearby().tag(),
				this.planted.countyOnly().tag());
		assertThat(column(lines, "place")).containsExactly("exact", "nearby", "county");
		assertThat(column(lines, "latitude")).containsExactly("40.123457", "40.125000", "");
		assertThat(column(lines, "accuracyMetres")).containsExactly("8.0", "800.0", "");
		assertThat(column(lines, "rank")).containsExactly("2", "3", "4");
		assertThat(column(lines, "girthInches")).containsExactly("130.00", "120.00", "110.00");
	}

	@Test
	void theScoresComeWithHowTheyWereMeasured() throws Exception {
		List<CSVRecord> lines = csv("scores.csv");
		assertThat(column(lines, "points")).containsExactly("220.00", "210.00", "200.00");
		assertThat(column(lines, "girthMethod")).containsOnly("tape");
		assertThat(column(lines, "heightMethod")).containsOnly("pole");
		assertThat(column(lines, "crownMethod")).containsOnly("axes");
		assertThat(column(lines, "withdrawnAt")).containsOnly("");
	}

	@Test
	void theMapsPointsAreThoseShown() throws Exception {
		JsonNode map = this.json.readTree(read("trees.geojson"));
		assertThat(map.path("type").stringValue("")).isEqualTo("FeatureCollection");
		assertThat(map.path("features").size()).isEqualTo(3);
		Geometry exact = point(map, this.planted.exact());
		assertThat(exact.getCoordinate().x).isCloseTo(TestOpenCounty.LONGITUDE, within(1e-6));
		assertThat(exact.getCoordinate().y).isCloseTo(TestOpenCounty.LATITUDE, within(1e-6));
		Geometry nearby = point(map, this.planted.nearby());
		assertThat(nearby.getCoordinate().y).isCloseTo(40.125, within(1e-6));
		assertThat(feature(map, this.planted.nearby()).at("/properties/accuracyMetres").asDouble()).isEqualTo(800);
		assertThat(feature(map, this.planted.countyOnly()).path("geometry").isNull()).isTrue();
	}

	@Test
	void gdalReadsTheMapAndTheListAlike(@TempDir Path folder) throws Exception {
		Path map = folder.resolve("trees.geojson");
		Path list = folder.resolve("trees.csv");
		Files.writeString(map, read("trees.geojson"));
		Files.writeString(list, read("trees.csv"));
		Path ofMap = folder.resolve("map.csv");
		Path ofList = folder.resolve("list.csv");
		Gdal.run("ogr2ogr", "-f", "CSV", ofMap.toString(), map.toString(), "-lco", "GEOMETRY=AS_XY", "-select",
				"tag,girthInches,points,place");
		Gdal.run("ogr2ogr", "-f", "CSV", ofList.toString(), list.toString(), "-lco", "GEOMETRY=AS_XY", "-select",
				"tag,girthInches,points,place", "-oo", "X_POSSIBLE_NAMES=longitude", "-oo", "Y_POSSIBLE_NAMES=latitude",
				"-oo", "AUTODETECT_TYPE=YES");
		List<CSVRecord> one = parse(Files.readString(ofMap));
		List<CSVRecord> other = parse(Files.readString(ofList));
		assertThat(one).hasSize(3);
		for (String name : List.of("X", "Y", "girthInches", "points")) {
			assertThat(numbers(one, name)).as(name).isEqualTo(numbers(other, name));
		}
		assertThat(column(one, "tag")).isEqualTo(column(other, "tag"));
	}

	@Test
	void whoHasTheBytesIsNotSentThemAgain() throws Exception {
		for (String file : FILES) {
			String address = "/exports/" + COUNTY + "/" + file;
			String tag = this.mvc.perform(get(address))
				.andExpect(status().isOk())
				.andExpect(header().string(HttpHeaders.CONTENT_DISPOSITION, containsString(COUNTY)))
				.andReturn()
				.getResponse()
				.getHeader(HttpHeaders.ETAG);
			assertThat(tag).as(file).matches("\"[0-9a-f]{64}\"");
			this.mvc.perform(get(address).header(HttpHeaders.IF_NONE_MATCH, String.valueOf(tag)))
				.andExpect(status().isNotModified())
				.andExpect(content().string(""));
		}
	}

	@Test
	void nothingLeadsToWhatIsNotShown() throws Exception {
		One hidden = this.planted.unlisted();
		for (String file : List.of("standings.csv", "standings.csv?asOf=2024-06-01", "trees.csv", "scores.csv",
				"trees.geojson")) {
			assertThat(read(file)).as(file)
				.doesNotContain(hidden.id(), hidden.tag(), hidden.measurement(), "Landholder", "Measurer");
		}
		for (String file : List.of("trees.csv", "trees.geojson")) {
			assertThat(read(file).split(TestOpenCounty.EXACT_LATITUDE, -1)).as("exact places in " + file).hasSize(2);
		}
	}

	@Test
	void showsTodayWhatMayBeShownTodayAndNoLonger() throws Exception {
		Planted later = this.counties.found("openlater", "OPL");
		String address = "/exports/openlater/standings.csv?asOf=2024-06-01&knownAt="
				+ java.time.Instant.now().plusSeconds(0);
		assertThat(this.counties.read(address)).contains(later.nearby().tag());
		this.counties.unlist(later.nearby(), later.coordinator());
		assertThat(this.counties.read(address)).doesNotContain(later.nearby().tag(), later.nearby().id())
			.contains(later.exact().tag());
		assertThat(this.counties.read("/exports/openlater/trees.csv")).doesNotContain(later.nearby().tag());
	}

	@Test
	void countiesForPracticeHaveNoOpenData() throws Exception {
		this.trees.practiceCounty("openpractice", "OPP");
		this.trees.standing("openpractice", 150, "2024-05-02");
		for (String file : FILES) {
			this.mvc.perform(get("/exports/openpractice/" + file)).andExpect(status().isNotFound());
		}
	}

	private List<CSVRecord> csv(String file) throws Exception {
		return parse(read(file));
	}

	private static List<CSVRecord> parse(String text) throws Exception {
		return CSVFormat.RFC4180.builder()
			.setHeader()
			.setSkipHeaderRecord(true)
			.get()
			.parse(new StringReader(text))
			.getRecords();
	}

	private static List<String> column(List<CSVRecord> lines, String name) {
		return lines.stream().map((line) -> line.get(name)).toList();
	}

	private static List<Double> numbers(List<CSVRecord> lines, String name) {
		return column(lines, name).stream().map((text) -> text.isBlank() ? Double.NaN : Double.valueOf(text)).toList();
	}

	private String read(String file) throws Exception {
		return this.counties.read("/exports/" + COUNTY + "/" + file);
	}

	private static JsonNode feature(JsonNode map, One tree) {
		for (JsonNode feature : map.path("features")) {
			if (feature.path("id").stringValue("").equals(tree.id())) {
				return feature;
			}
		}
		throw new AssertionError("no feature of " + tree.tag());
	}

	private static Geometry point(JsonNode map, One tree) throws Exception {
		return new GeoJsonReader().read(feature(map, tree).path("geometry").toString());
	}

}
