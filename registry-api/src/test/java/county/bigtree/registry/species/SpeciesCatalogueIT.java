package county.bigtree.registry.species;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

import county.bigtree.db.TestDatabase;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/**
 * Codes, symbols and names expected here are those of the FIA list (REF_SPECIES, USDA
 * Forest Service) unless said otherwise; which writings mean the same is common practice,
 * no source.
 */
@TestInstance(Lifecycle.PER_CLASS)
class SpeciesCatalogueIT {

	private TestDatabase database;

	private SpeciesCatalogue catalogue;

	@BeforeAll
	void open() {
		this.database = TestDatabase.migrated();
		this.catalogue = new SpeciesCatalogue(JdbcClient.create(this.database.service().dataSource()));
	}

	@AfterAll
	void close() {
		this.database.close();
	}

	@Test
	void tellsWhatIsKnownOfASpecies() {
		assertThat(this.catalogue.get("quercus-alba")).isEqualTo(new Species("quercus-alba", "Quercus alba", "Quercus",
				"alba", null, null, false, "white oak", 802, "QUAL", false, false, "FIA REF_SPECIES"));
	}

	@Test
	void keepsAVarietyBesideItsSpecies() {
		Species variety = this.catalogue.get("tilia-americana-var-heterophylla");
		assertThat(variety.infraspecificRank()).isEqualTo("var.");
		assertThat(variety.infraspecificName()).isEqualTo("heterophylla");
		assertThat(this.catalogue.get("tilia-americana").fiaCode()).isEqualTo(951);
	}

	@Test
	void knowsAConiferWhereTheListLeavesTheMarkOut() {
		assertThat(this.catalogue.get("larix-kaempferi").conifer()).isTrue();
		assertThat(this.catalogue.get("ginkgo-biloba").conifer()).isFalse();
	}

	@Test
	void hasNoSpeciesUnderAnUnknownKey() {
		assertThat(this.catalogue.find("quercus-nulla")).isEmpty();
		assertThatExceptionOfType(UnknownSpecies.class).isThrownBy(() -> this.catalogue.get("quercus-nulla"))
			.satisfies((ex) -> assertThat(ex.key()).isEqualTo("quercus-nulla"));
	}

	@ParameterizedTest
	@CsvSource({ "Quercus alba, quercus-alba", "'  QUERCUS   alba ', quercus-alba", "Quercus alba L., quercus-alba",
			"white oak, quercus-alba", "Platanus x acerifolia, platanus-x-acerifolia",
			"Platanus ×acerifolia, platanus-x-acerifolia", "Platanus × acerifolia, platanus-x-acerifolia",
			"Platanus acerifolia, platanus-x-acerifolia", "Platanus hybrida, platanus-x-acerifolia",
			"Platanus X hispanica, platanus-x-acerifolia", "Quercus prinus, quercus-montana",
			"Tilia americana var. heterophylla, tilia-americana-var-heterophylla",
			"Populus deltoides ssp. monilifera, populus-deltoides-subsp-monilifera",
			"Populus deltoides subsp. monilifera, populus-deltoides-subsp-monilifera",
			"Populus sargentii, populus-deltoides-subsp-monilifera",
			"Populus deltoides subsp. wislizeni, populus-deltoides", "Pinus elliottii var. elliottii, pinus-elliottii",
			"Acer rubrum (red maple), acer-rubrum", "Acer platanoides ‘Crimson King’, acer-platanoides",
			"\"Acer platanoides \"\"Crimson King\"\"\", acer-platanoides", "Box Elder, acer-negundo",
			"boxelder, acer-negundo", "Eastern red-cedar, juniperus-virginiana", "loquat, eriobotrya-japonica",
			"Crataegus crus-galli, crataegus-crus-galli" })
	void matchesAName(String name, String key) {
		assertThat(this.catalogue.match(name)).isEqualTo(new NameMatch.Matched(this.catalogue.get(key)));
	}

	@ParameterizedTest
	@CsvSource({ "Malus sp., malus-spp", "Malus spp, malus-spp", "MALUS, malus-spp", "Malus 'Spring Snow', malus-spp",
			"Crataegus species, crataegus-spp", "Lagerstroemia sp., lagerstroemia-spp", "crab apple, malus-spp" })
	void matchesNoMoreThanAGenus(String name, String key) {
		assertThat(this.catalogue.match(name)).isEqualTo(new NameMatch.GenusOnly(this.catalogue.get(key)));
	}

	@ParameterizedTest
	@ValueSource(strings = { "Quercus alba x bicolor", "Quercus alba × bicolor", "Quercus nulla", "ironwood",
			"Unknown tree", "", "  ", "'", "Quercus alba?", "%", "\0" })
	void leavesUnknownWhatIsNoneOrSeveral(String name) {
		assertThat(this.catalogue.match(name)).isEqualTo(new NameMatch.Unknown(name));
	}

	/**
	 * Every distinct name of eight city inventories: Urban tree database, USDA Forest
	 * Service, RDS-2016-0005.
	 */
	@Test
	void matchesEveryNameOfEightCities() throws IOException {
		List<CSVRecord> names = cityNames();
		assertThat(names).hasSize(91)
			.allSatisfy((row) -> assertThat(key(row.get("name"))).isEqualTo(row.get("species")));
		assertThat(names).filteredOn((row) -> row.get("species").endsWith("-spp")).hasSize(6);
	}

	private String key(String name) {
		NameMatch match = this.catalogue.match(name);
		if (match instanceof NameMatch.Matched matched) {
			return matched.species().key();
		}
		return (match instanceof NameMatch.GenusOnly only) ? only.genus().key() : "unknown";
	}

	private static List<CSVRecord> cityNames() throws IOException {
		InputStream content = Objects
			.requireNonNull(SpeciesCatalogueIT.class.getResourceAsStream("city-tree-names.csv"));
		try (Reader reader = new InputStreamReader(content, StandardCharsets.UTF_8)) {
			return CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get().parse(reader).getRecords();
		}
	}

	@Test
	void listsTheAcceptedNameFirst() {
		assertThat(this.catalogue.listNames("quercus-montana"))
			.startsWith(new SpeciesName("Quercus montana", "accepted"), new SpeciesName("Quercus prinus", "former"))
			.contains(new SpeciesName("rock chestnut oak", "common"));
	}

	@ParameterizedTest
	@CsvSource({ "quercus alb, quercus-alba", "sycamore, platanus-occidentalis", "sugar map, acer-saccharum",
			"acsa3, acer-saccharum", "Quercs alba, quercus-alba", "sycamoer, platanus-occidentalis",
			"saccharrum, acer-saccharum", "plane, platanus-x-acerifolia", "cottonwod, populus-deltoides" })
	void findsByPartSymbolOrMisspeltName(String query, String key) {
		assertThat(this.catalogue.search(query, null, 0, 20)).extracting(Species::key).contains(key);
	}

	@Test
	void putsTheClosestNameFirst() {
		assertThat(this.catalogue.search("red maple", null, 0, 5)).first()
			.extracting(Species::key)
			.isEqualTo("acer-rubrum");
		assertThat(this.catalogue.search("QUAL", null, 0, 5)).first()
			.extracting(Species::key)
			.isEqualTo("quercus-alba");
	}

	@Test
	void findsNothingForWhatIsLikeNothing() {
		assertThat(this.catalogue.search("zzkqx", null, 0, 20)).isEmpty();
		assertThat(this.catalogue.search("100%_", null, 0, 20)).isEmpty();
	}

	@Test
	void listsTheWholeCatalogueInPagesWithoutRepeating() {
		List<Species> first = this.catalogue.search("", null, 0, 500);
		List<Species> second = this.catalogue.search("", null, 500, 500);
		assertThat(first).hasSize(500).doesNotContainAnyElementsOf(second);
		assertThat(this.catalogue.search("", null, 0, 10_000)).hasSize(3155);
	}

}
