package county.bigtree.registry.transfer;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import com.jayway.jsonpath.DocumentContext;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A messy sheet of 300 rows: each is accepted, kept, waiting or rejected, and it is known
 * why. The figures of the accepted ones come to what was meant by them, however they were
 * written: girth in inches + height in feet + a quarter of the spread in feet (common
 * practice, no source).
 */
@RegistryTest
class MessySheetIT {

	private static final String MAPPING = """
			{"measuredOn": "2011-06-01", "basis": "An invented county list", "rowKey": "no", "columns": {"species": "tree",
			 "tag": "no", "girth": {"column": "girth", "method": "tape", "unit": "in"},
			 "height": {"column": "height", "unit": "ft"}, "crown": {"column": "spread", "unit": "ft"},
			 "latitude": {"constant": "40.5"}, "longitude": {"constant": "-87.5"}, "owner": "owner", "contact": "phone",
			 "visitNotes": "seen", "statedPoints": "pts"}, "locationAccuracyMetres": 20000}""";

	private final ImportClient imports;

	@Autowired
	private JdbcClient jdbc;

	MessySheetIT(@Autowired MockMvc mvc, @Autowired TestPeople people) {
		this.imports = new ImportClient(mvc, people);
	}

	@Test
	void accountsForEveryRow() throws Exception {
		MessySheet sheet = new MessySheet();
		byte[] file = resource();
		assertThat(new String(file, StandardCharsets.UTF_8)).isEqualTo(sheet.text());
		TestPerson coordinator = this.imports.county("messyton", "IMM", "");
		DocumentContext job = this.imports.run("messyton", coordinator, file, MAPPING);
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("status", "done")
			.containsEntry("rows", 300)
			.containsEntry("accepted", 210)
			.containsEntry("kept", 30)
			.containsEntry("waiting", 30)
			.containsEntry("rejected", 30)
			.containsEntry("alreadyImported", 0)
			.containsEntry("notes", 6);
		assertThat(sheet.points).hasSize(210);
		String path = "/api/v1/imports/" + job.<String>read("$.id");
		assertThat(
				JsonPath.parse(this.imports.read(path + "/unknown-names", coordinator)).<List<Object>>read("$.items"))
			.extracting((name) -> JsonPath.parse(name).read("$.name") + " " + JsonPath.parse(name).read("$.rows"))
			.containsExactly("Old man oak 20", "Witch's ash 10");
		assertThat(reasons(this.imports.read(path + "/rejected.csv", coordinator)))
			.containsExactlyInAnyOrderEntriesOf(expectedReasons());
		assertThat(scores()).containsExactlyInAnyOrderEntriesOf(sheet.points);
		assertThat(
				this.jdbc.sql("select count(*) from older_record where county = 'messyton'").query(Long.class).single())
			.isEqualTo(240);
	}

	@Test
	void accountsForEveryRowOfTheSameSheetAsAWorkbook() throws Exception {
		TestPerson coordinator = this.imports.county("bookton", "IMN", "");
		DocumentContext job = this.imports.run("bookton", coordinator, workbook(), MAPPING);
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("status", "done")
			.containsEntry("rows", 300)
			.containsEntry("accepted", 210)
			.containsEntry("kept", 30)
			.containsEntry("waiting", 30)
			.containsEntry("rejected", 30)
			.containsEntry("notes", 6);
	}

	private static byte[] workbook() throws Exception {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		CsvFile sheet = CsvFile.of(resource());
		try (Workbook workbook = new Workbook(bytes, "test", "1.0")) {
			Worksheet trees = workbook.newWorksheet("trees");
			write(trees, 0, sheet.header());
			sheet.forEach((row) -> write(trees, row.number() - 1, row.cells()));
		}
		return bytes.toByteArray();
	}

	/** Plain numbers as numbers, all else as text. */
	private static void write(Worksheet sheet, int row, List<String> cells) {
		for (int column = 0; column < cells.size(); column++) {
			String cell = cells.get(column);
			if (cell.matches("[0-9]+")) {
				sheet.value(row, column, Integer.parseInt(cell));
			}
			else if (!cell.isEmpty()) {
				sheet.value(row, column, cell);
			}
		}
	}

	private static Map<String, Integer> expectedReasons() {
		return Map.of("girth: is missing", 3, "height: must be a length", 3, "girth: may be 1234 or 1.234", 3,
				"height: no tree has a height", 3, "tree: is missing", 3, "no: tells the rows apart", 3,
				"spread: has a unit that is not known: rods", 3, "girth: must be greater than 0", 3, "no: is missing",
				3, "height: must be from 0 to below 12", 3);
	}

	/** How often each of the reasons expected is given, and every other line. */
	private static Map<String, Integer> reasons(String csv) {
		Map<String, Integer> reasons = new HashMap<>();
		csv.lines()
			.skip(1)
			.map((line) -> expectedReasons().keySet().stream().filter(line::contains).findFirst().orElse(line))
			.forEach((reason) -> reasons.merge(reason, 1, Integer::sum));
		return reasons;
	}

	private Map<String, BigDecimal> scores() {
		Map<String, BigDecimal> scores = new HashMap<>();
		this.jdbc.sql(
				"select t.file_tag, s.points from score s join tree t on t.id = s.tree where s.county = 'messyton' and s.withdrawn_at is null")
			.query((row) -> {
				scores.put(row.getString("file_tag"),
						row.getBigDecimal("points")
							.stripTrailingZeros()
							.setScale(Math.max(0, row.getBigDecimal("points").stripTrailingZeros().scale())));
			});
		return scores;
	}

	private static byte[] resource() throws Exception {
		try (InputStream in = Objects
			.requireNonNull(MessySheetIT.class.getResourceAsStream("/imports/messy-sheet.csv"))) {
			return in.readAllBytes();
		}
	}

}
