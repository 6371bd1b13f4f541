package county.bigtree.registry.transfer;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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

	/** Rows whose invented figures don't go together, as counted once. */
	private static final int ODD = 70;

	private static final String MAPPING = """
			{"basis": "An invented county list", "rowKey": "no", "columns": {"species": "tree", "tag": "no",
			 "latitude": {"constant": "40.5"}, "longitude": {"constant": "-87.5"}, "owner": "owner", "contact": "phone",
			 "finder": "finder", "popularName": "called", "condition": "state", "visitNotes": "seen", "statedPoints": "pts"},
			 "visits": [{"measuredOn": "day", "girth": {"column": "girth", "method": "tape", "unit": "in"},
			  "height": {"column": "height", "unit": "ft"}, "crown": {"column": "spread", "unit": "ft"}},
			  {"measuredOn": "again", "girth": {"column": "girth 2", "method": "tape", "unit": "in"},
			  "height": {"column": "height 2", "unit": "ft"}, "crown": {"column": "spread 2", "unit": "ft"}}],
			 "locationAccuracyMetres": 20000}""";

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
			.containsEntry("changed", 0)
			.containsEntry("waiting", 30)
			.containsEntry("rejected", 30)
			.containsEntry("alreadyImported", 0)
			.containsEntry("notes", 12 + ODD);
		assertThat(sheet.points).hasSize(204);
		String path = "/api/v1/imports/" + job.<String>read("$.id");
		assertThat(
				JsonPath.parse(this.imports.read(path + "/unknown-names", coordinator)).<List<Object>>read("$.items"))
			.extracting((name) -> JsonPath.parse(name).read("$.name") + " " + JsonPath.parse(name).read("$.rows"))
			.containsExactly("Old man oak 20", "Witch's ash 10");
		assertThat(reasons(this.imports.read(path + "/rejected.csv", coordinator)))
			.containsExactlyInAnyOrderEntriesOf(expectedReasons());
		assertThat(scores()).containsExactlyInAnyOrderEntriesOf(sheet.points);
		assertThat(this.jdbc
			.sql("""
					select count(*) || ' ' || count(finder) || ' ' || count(popular_name) from older_record where county = 'messyton'""")
			.query(String.class)
			.single()).isEqualTo("240 240 15");
		assertThat(days()).containsExactly("day 2010 120", "day 2015 48", "month 2010 60", "year 2010 60");
		assertKeptOn(coordinator);
	}

	/** The sheet again, and then as it was kept on. */
	private void assertKeptOn(TestPerson coordinator) throws Exception {
		assertThat(this.imports.run("messyton", coordinator, resource(), MAPPING).<Map<String, Object>>read("$"))
			.containsEntry("accepted", 0)
			.containsEntry("kept", 0)
			.containsEntry("changed", 0)
			.containsEntry("waiting", 30)
			.containsEntry("rejected", 30)
			.containsEntry("alreadyImported", 240);
		MessySheet later = new MessySheet(true);
		assertThat(this.imports.run("messyton", coordinator, later.text().getBytes(StandardCharsets.UTF_8), MAPPING)
			.<Map<String, Object>>read("$")).containsEntry("accepted", 0)
			.containsEntry("kept", 0)
			.containsEntry("changed", 24)
			.containsEntry("waiting", 30)
			.containsEntry("rejected", 30)
			.containsEntry("alreadyImported", 216);
		assertThat(scores()).containsExactlyInAnyOrderEntriesOf(later.points);
	}

	/**
	 * Of the 30 rows that are rejected otherwise, 18 are trees to be measured, 2 wait for
	 * what their name means, and 2 lack figures only of a further visit.
	 */
	@Test
	void accountsForEveryRowWhereIncompleteOnesAreKept() throws Exception {
		TestPerson coordinator = this.imports.county("keepmess", "IMO", "");
		DocumentContext job = this.imports.run("keepmess", coordinator, resource(),
				MAPPING.replace("{\"basis\"", "{\"incomplete\": \"keep\", \"basis\""));
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("status", "done")
			.containsEntry("accepted", 212)
			.containsEntry("kept", 48)
			.containsEntry("waiting", 32)
			.containsEntry("rejected", 8)
			.containsEntry("notes", 32 + ODD);
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
			.containsEntry("notes", 12 + ODD);
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

	/** Plain numbers as numbers, plain days as days, all else as text. */
	private static void write(Worksheet sheet, int row, List<String> cells) {
		for (int column = 0; column < cells.size(); column++) {
			String cell = cells.get(column);
			if (cell.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
				sheet.value(row, column, LocalDate.parse(cell));
				sheet.style(row, column).format("m/d/yyyy").set();
			}
			else if (cell.matches("[0-9]+")) {
				sheet.value(row, column, Integer.parseInt(cell));
			}
			else if (!cell.isEmpty()) {
				sheet.value(row, column, cell);
			}
		}
	}

	private static Map<String, Integer> expectedReasons() {
		return Stream
			.of("girth: is missing", "height: must be a length", "girth: may be 1234 or 1.234",
					"height: no tree has a height", "tree: is missing", "no: tells the rows apart",
					"spread: has a unit that is not known: rods", "girth: must be greater than 0", "no: is missing",
					"height: must be from 0 to below 12", "day: must name the year with four digits",
					"day: must be a day", "day: is missing", "height 2: is missing; spread 2: is missing",
					"two visits are of the same day, 2010-06")
			.collect(Collectors.toMap((reason) -> reason, (reason) -> 2));
	}

	/** How many measurements are of a day known to what, in which year. */
	private List<String> days() {
		return this.jdbc.sql("""
				select coalesce(measured_on_known_to, 'day') || ' ' || extract(year from measured_on) || ' ' || count(*)
				from measurement where county = 'messyton' group by measured_on_known_to, extract(year from measured_on)
				order by 1""").query(String.class).list();
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
				"select t.file_tag, s.points from score s join tree t on t.id = s.tree where s.county = 'messyton' and s.withdrawn_at is null and s.ends_on is null")
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
