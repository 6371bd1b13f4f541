package county.bigtree.registry.transfer;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import com.jayway.jsonpath.DocumentContext;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.transfer.CityFile.CityTree;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A whole city's trees, imported and compared with rankings worked out straight from the
 * published file (McPherson, van Doorn and Peper 2016, Urban tree database, USDA Forest
 * Service, RDS-2016-0005). The measuring day is assumed: the file has none.
 */
@RegistryTest
class ImportIT {

	private static final BigDecimal HUNDREDTH = new BigDecimal("0.01");

	private static final BigDecimal TIE = new BigDecimal(5);

	private static final String MAPPING = """
			{"measuredOn": "2010-06-01", "basis": "City field crew, 2010", "columns": {"species": "ScientificName",
			 "tag": "TreeID", "girth": {"column": "DBH (cm)", "method": "diameter", "unit": "cm"},
			 "height": {"column": "TreeHt (m)", "unit": "m"}, "crown": {"column": "AvgCdia (m)", "unit": "m"},
			 "latitude": "Lat", "longitude": "Long"}, "locationAccuracyMetres": 20000}""";

	private final ImportClient imports;

	@Autowired
	private JdbcClient jdbc;

	ImportIT(@Autowired MockMvc mvc, @Autowired TestPeople people) {
		this.imports = new ImportClient(mvc, people);
	}

	/**
	 * By the rules of a county that has said nothing else, figures of 2010 are stale, and
	 * 12 years after the trees were last seen they no longer keep a title.
	 */
	@Test
	void ranksACityAsTheFileSaysAndGivesNoTitleToTreesUnseenForTooLong() throws Exception {
		CityFile city = new CityFile("boise.csv");
		TestPerson coordinator = this.imports.county("boiseton", "IMA", "");
		DocumentContext job = this.imports.run("boiseton", coordinator, city.bytes, MAPPING);
		assertFinished(job, city.rows(), city.ranked(), city.genusOnly.size(), 0, 0);
		assertRankings("boiseton", city, coordinator, false);
		assertThat(this.jdbc.sql("""
				select t.file_tag from tree t
				join identification i on i.tree = t.id join species s on s.key = i.species
				where t.county = 'boiseton' and s.genus_only order by t.id""").query(String.class).list())
			.containsExactlyElementsOf(city.genusOnly);
	}

	/**
	 * Where trees may go unseen for long enough, those with most points are champions,
	 * and those within 5 points of them co-champions.
	 */
	@Test
	void givesTheTitlesThatTheFileSaysWhereTheRulesLetStaleFiguresKeepThem() throws Exception {
		CityFile city = new CityFile("boise.csv");
		TestPerson coordinator = this.imports.county("boisefield", "IMB", """
				, "rulebook": {"effectiveOn": "1800-01-01", "sightingYears": 100}""");
		DocumentContext job = this.imports.run("boisefield", coordinator, city.bytes, MAPPING);
		assertFinished(job, city.rows(), city.ranked(), city.genusOnly.size(), 0, 0);
		assertRankings("boisefield", city, coordinator, true);
	}

	@Test
	void addsNothingWhenTheSameFileComesAgain() throws Exception {
		CityFile city = new CityFile("boise.csv");
		TestPerson coordinator = this.imports.county("twicefield", "IMC", "");
		this.imports.run("twicefield", coordinator, city.bytes, MAPPING);
		List<Long> before = recorded("twicefield");
		assertThat(before.get(0)).isEqualTo(city.rows());
		DocumentContext again = this.imports.run("twicefield", coordinator, city.bytes,
				MAPPING.replace("City field crew, 2010", "The same once more"));
		assertFinished(again, city.rows(), 0, 0, 0, city.rows());
		assertThat(recorded("twicefield")).isEqualTo(before);
	}

	private void assertRankings(String county, CityFile city, TestPerson reader, boolean titles) throws Exception {
		Map<String, String> numbers = numbersByTag(county);
		assertThat(numbers).hasSize(city.rows());
		assertThat(this.jdbc.sql("select species from book where county = ? and trees > 0 order by species")
			.param(county)
			.query(String.class)
			.list()).containsExactlyElementsOf(city.rankings.keySet());
		for (Map.Entry<String, List<CityTree>> ranking : city.rankings.entrySet()) {
			String path = "/api/v1/counties/%s/species/%s/standing?limit=500".formatted(county, ranking.getKey());
			List<Map<String, Object>> items = JsonPath.parse(this.imports.read(path, reader)).read("$.items");
			assertRanking(items, ranking.getValue(), numbers, titles);
		}
	}

	private static void assertRanking(List<Map<String, Object>> items, List<CityTree> trees,
			Map<String, String> numbers, boolean titles) {
		Map<String, CityTree> byNumber = new HashMap<>();
		trees.forEach((tree) -> byNumber.put(tree.number(), tree));
		assertThat(items).hasSameSizeAs(trees);
		for (Map<String, Object> item : items) {
			CityTree tree = byNumber.remove(numbers.get(item.get("tag")));
			assertThat(tree).as("a tree of the file for %s, once", item).isNotNull();
			if (tree != null) {
				assertClose(item, "points", tree.points());
				assertClose(item, "girthInches", tree.girth());
				assertClose(item, "heightFeet", tree.height());
				assertClose(item, "crownSpreadFeet", tree.crown());
				assertThat(item).containsEntry("rank", rank(tree, trees))
					.containsEntry("title", titles ? title(tree, trees) : null)
					.containsEntry("stale", true)
					.containsEntry("carriedOver", true)
					.containsEntry("effectiveOn", "2010-06-01");
			}
		}
	}

	private static void assertClose(Map<String, Object> item, String field, BigDecimal expected) {
		assertThat(new BigDecimal(String.valueOf(item.get(field)))).as(field + " of " + item)
			.isCloseTo(expected, org.assertj.core.data.Offset.offset(HUNDREDTH));
	}

	private static int rank(CityTree tree, List<CityTree> trees) {
		return 1 + (int) trees.stream().filter((other) -> other.points().compareTo(tree.points()) > 0).count();
	}

	private static @Nullable String title(CityTree tree, List<CityTree> trees) {
		BigDecimal behind = trees.get(0).points().subtract(tree.points());
		if (behind.signum() == 0) {
			return "champion";
		}
		return (behind.compareTo(TIE) <= 0) ? "co-champion" : null;
	}

	private static void assertFinished(DocumentContext job, int rows, int accepted, int kept, int rejected,
			int already) {
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("status", "done")
			.containsEntry("rows", rows)
			.containsEntry("accepted", accepted)
			.containsEntry("kept", kept)
			.containsEntry("rejected", rejected)
			.containsEntry("alreadyImported", already);
		assertThat(job.<Number>read("$.progress").doubleValue()).isEqualTo(1);
	}

	private Map<String, String> numbersByTag(String county) {
		Map<String, String> numbers = new HashMap<>();
		this.jdbc.sql("select tag, file_tag from tree where county = ?").param(county).query((row) -> {
			numbers.put(row.getString("tag"), row.getString("file_tag"));
		});
		return numbers;
	}

	/** How many trees, measurements and changes a county has. */
	private List<Long> recorded(String county) {
		return List.of("tree", "measurement", "change")
			.stream()
			.map((table) -> this.jdbc.sql("select count(*) from " + table + " where county = ?")
				.param(county)
				.query(Long.class)
				.single())
			.toList();
	}

}
