package county.bigtree.registry.transfer;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import com.jayway.jsonpath.DocumentContext;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What becomes of single rows, and what is refused before any row is read.
 */
@RegistryTest
class ImportRowsIT {

	private static final String MAPPING = """
			{"measuredOn": "1998-05-01", "basis": "An invented list of 1998", "columns": {"species": "name", "tag": "no",
			 "girth": {"column": "girth", "method": "tape", "unit": "in"}, "height": {"column": "height", "unit": "ft"},
			 "crown": {"column": "crown", "unit": "ft"}, "latitude": {"constant": "40.5"},
			 "longitude": {"constant": "-87.5"}}, "locationAccuracyMetres": 20000}""";

	private static final String HEADER = "no,name,girth,height,crown,note\r\n";

	private final ImportClient imports;

	private final TestPeople people;

	@Autowired
	private ImportJobs jobs;

	@Autowired
	private RunImport running;

	@Autowired
	private JdbcClient jdbc;

	ImportRowsIT(@Autowired MockMvc mvc, @Autowired TestPeople people) {
		this.imports = new ImportClient(mvc, people);
		this.people = people;
	}

	@Test
	void givesEveryRejectedRowBackWithItsReasonAndNoFormula() throws Exception {
		TestPerson coordinator = this.imports.county("rejectton", "IRA", "");
		DocumentContext job = this.imports.run("rejectton", coordinator, file("""
				R1,Quercus alba,100,80,40,sound
				R2,Malus sp.,100,80,40,
				R3,Nulla talis,100,80,40,=1+1
				R4,Nulla talis,,80,40,@note
				R5,Quercus alba,100,0,40,
				R6,Quercus alba,100,-3,forty,-5.5
				R7,Quercus alba,100,500,40,"=a ""quoted"", note"
				R8,,100,80,40,
				R9,Quercus alba,100
				,,,,,
				"""), MAPPING);
		assertCounts(job, 9, 1, 6, 0);
		assertThat(job.<Integer>read("$.waiting")).isOne();
		assertThat(job.<Integer>read("$.kept")).isOne();
		String path = "/api/v1/imports/" + job.<String>read("$.id") + "/rejected.csv";
		this.imports.ask(path, coordinator)
			.andExpect(status().isOk())
			.andExpect(header().string(HttpHeaders.CONTENT_TYPE, "text/csv;charset=UTF-8"));
		assertThat(this.imports.read(path, coordinator).split("\r\n")).containsExactly(
				"rejected row,rejected because,no,name,girth,height,crown,note",
				"5,girth: is missing; name: no species of the catalogue is called Nulla talis,R4,Nulla talis,,80,40,'@note",
				"6,height: must be greater than 0 but was 0,R5,Quercus alba,100,0,40,",
				"7,\"height: must be greater than 0 but was -0.9144; crown: must be a length, such as 12.5, 3.75 m or "
						+ "12 ft 4 in, but was forty\",R6,Quercus alba,100,-3,forty,-5.5",
				"8,\"height: no tree has a height of less than 1 mm or more than 130 m, but this is 500 ft\","
						+ "R7,Quercus alba,100,500,40,\"'=a \"\"quoted\"\", note\"",
				"9,name: is missing,R8,,100,80,40,",
				"10,\"The row has 3 entries, but the header has 6.\",R9,Quercus alba,100");
	}

	/** 100 in + 80.5 ft + 40 ft / 4 = 190.5 (common practice, no source). */
	@Test
	void readsFeetAndInchesAndAByteOrderMark() throws Exception {
		TestPerson coordinator = this.imports.county("feetton", "IRB", "");
		byte[] file = ("\uFEFF" + HEADER
				+ "F1,white oak,8' 4\"\"\",80ft 6in,40'\r\n".replace("8'", "\"8'").replace("40'\r", "40',\r"))
			.getBytes(StandardCharsets.UTF_8);
		assertCounts(this.imports.run("feetton", coordinator, file, MAPPING), 1, 1, 0, 0);
		this.imports.ask("/api/v1/counties/feetton/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[0].points").value(190.5))
			.andExpect(jsonPath("$.items[0].girthInches").value(100.0))
			.andExpect(jsonPath("$.items[0].tag").value("F1"));
	}

	@Test
	void takesOnlyTagsThatAreFreeAndCanStandInAnAddressAndKeepsTheFilesBeside() throws Exception {
		TestPerson coordinator = this.imports.county("tagton", "IRC", "");
		assertCounts(this.imports.run("tagton", coordinator, file("""
				IRC-0001,Quercus alba,100,80,40,takes the number that the register would give next
				a/b,Quercus alba,101,80,40,
				IRC-0001,Quercus alba,102,80,40,
				,Quercus alba,103,80,40,
				"""), MAPPING), 4, 4, 0, 0);
		assertThat(this.jdbc.sql("""
				select t.tag || ' ' || coalesce(t.file_tag, '-') from tree t join import_row r on r.tree = t.id
				where t.county = 'tagton' order by r.row_number""").query(String.class).list())
			.containsExactly("IRC-0001 IRC-0001", "IRC-0002 a/b", "IRC-0003 IRC-0001", "IRC-0004 -");
	}

	@Test
	void takesARowOnceByItsKeyAndTellsTheChangedOnesApart() throws Exception {
		TestPerson coordinator = this.imports.county("keyton", "IRD", "");
		String mapping = MAPPING.replace("{\"measuredOn\"", "{\"rowKey\": \"no\", \"measuredOn\"");
		assertCounts(this.imports.run("keyton", coordinator, file("K1,Quercus alba,100,80,40,\n"), mapping), 1, 1, 0,
				0);
		DocumentContext job = this.imports.run("keyton", coordinator,
				file("K1,Quercus alba,120,80,40,\nK2,Quercus alba,90,80,40,\nK2,Quercus alba,95,80,40,\n"), mapping);
		assertCounts(job, 3, 1, 1, 0);
		assertThat(job.<Integer>read("$.changed")).isOne();
		assertThat(this.imports.read("/api/v1/imports/" + job.<String>read("$.id") + "/rejected.csv", coordinator))
			.contains("4,\"no: tells the rows apart, but an earlier row has K2 too\",K2");
	}

	@Test
	void takesTwoRowsThatSayTheSameAsTwoTrees() throws Exception {
		TestPerson coordinator = this.imports.county("pairton", "IRE", "");
		byte[] file = file(",Quercus alba,100,80,40,\n,Quercus alba,100,80,40,\n");
		assertCounts(this.imports.run("pairton", coordinator, file, MAPPING), 2, 2, 0, 0);
		assertCounts(this.imports.run("pairton", coordinator, file, MAPPING), 2, 0, 0, 2);
	}

	@Test
	void keepsATreeOfWhichOnlyTheGenusIsKnownAndRanksItOnceItIsIdentified() throws Exception {
		TestPerson coordinator = this.imports.county("genuston", "IRJ", "");
		DocumentContext job = this.imports.run("genuston", coordinator, file("G1,Malus sp.,100,80,40,\n"), MAPPING);
		assertCounts(job, 1, 0, 0, 0);
		assertThat(job.<Integer>read("$.kept")).isOne();
		this.imports.ask("/api/v1/trees/G1", coordinator)
			.andExpect(jsonPath("$.species").value("malus-spp"))
			.andExpect(jsonPath("$.score").value(org.hamcrest.Matchers.nullValue()));
		this.imports
			.decide("/api/v1/trees/G1", "/identifications", coordinator,
					"{\"species\": \"malus-fusca\", \"by\": \"leaf\", \"reason\": \"Seen in leaf.\"}")
			.andExpect(status().isOk());
		this.imports.ask("/api/v1/trees/G1", coordinator).andExpect(jsonPath("$.score.points").value(190.0));
	}

	@Test
	void writesNothingInADryRunButTellsWhatItWouldDo() throws Exception {
		TestPerson coordinator = this.imports.county("dryton", "IRF", "");
		DocumentContext job = this.imports.run("dryton", coordinator,
				file("D1,Quercus alba,100,80,40,\nD2,Quercus alba,,80,40,\n"),
				MAPPING.replace("{\"measuredOn\"", "{\"dryRun\": true, \"measuredOn\""));
		assertCounts(job, 2, 1, 1, 0);
		assertThat(this.jdbc.sql("select count(*) from tree where county = 'dryton'").query(Long.class).single())
			.isZero();
		assertThat(this.jdbc.sql("select count(*) from change where county = 'dryton'").query(Long.class).single())
			.isOne();
	}

	@Test
	void goesOnWithAnImportThatARestartInterrupted() throws Exception {
		TestPerson coordinator = this.imports.county("stopton", "IRG", "");
		byte[] file = file("S1,Quercus alba,100,80,40,\nS2,Quercus alba,,80,40,\nS3,Quercus alba,90,80,40,\n");
		UUID id = Uuid7.next();
		List<String> header = List.of("no", "name", "girth", "height", "crown", "note");
		this.jobs.queue(id, "stopton", coordinator.id(), new ImportJobs.Sent(MAPPING, header, file), false, 3);
		this.jobs.progress(id, ImportJob.Counts.rejected(1));
		this.jobs.reject(id, new FileRow.Rejected(3, "from before the restart", List.of("S2")));
		this.running.goOn();
		assertCounts(this.imports.finished("/api/v1/imports/" + id, coordinator), 3, 2, 1, 0);
		assertThat(this.jdbc.sql("select count(*) from import_job where id = ? and file is not null")
			.param(id)
			.query(Long.class)
			.single()).isZero();
	}

	@Test
	void refusesAMappingWithUnknownFieldsOrOneThatDoesNotFitTheFile() throws Exception {
		TestPerson coordinator = this.imports.county("mapton", "IRH", "");
		byte[] file = file("M1,Quercus alba,100,80,40,\n");
		this.imports
			.send("mapton", coordinator, file, MAPPING.replace("\"tag\": \"no\"", "\"tag\": \"no\", \"bark\": \"x\""))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/columns/bark"))
			.andExpect(jsonPath("$.errors[0].code").value("unknown-field"));
		this.imports
			.send("mapton", coordinator, file,
					"""
							{"measuredOn": "2999-01-01", "columns": {"species": "nowhere", "girth": "girth",
							 "height": {"column": "height", "unit": "furlong"}, "crown": {"column": "crown", "constant": "4", "unit": "m"},
							 "latitude": {"column": "no", "unit": "m"}}, "locationAccuracyMetres": 0}""")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[*].pointer", org.hamcrest.Matchers.contains("#/measuredOn", "#/basis",
					"#/locationAccuracyMetres", "#/columns/species", "#/columns/girth/method", "#/columns/girth/unit",
					"#/columns/height/unit", "#/columns/crown", "#/columns/latitude/unit", "#/columns/longitude")));
		this.imports.send("mapton", coordinator, "\u00e4,b\r\n".getBytes(StandardCharsets.ISO_8859_1), MAPPING)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/file"));
		this.imports.send("mapton", coordinator, file, "{").andExpect(status().isBadRequest());
	}

	@Test
	void isForTheCoordinatorsOfTheCountyAlone() throws Exception {
		TestPerson coordinator = this.imports.county("ownerton", "IRI", "");
		byte[] file = file("O1,Quercus alba,100,80,40,\n");
		DocumentContext job = this.imports.run("ownerton", coordinator, file, MAPPING);
		String path = "/api/v1/imports/" + job.<String>read("$.id");
		TestPerson other = this.people.coordinator("elsewhereton");
		this.imports.ask(path, other).andExpect(status().isNotFound());
		this.imports.ask(path + "/rejected.csv", other).andExpect(status().isNotFound());
		this.imports.ask(path, this.people.verifier("ownerton")).andExpect(status().isForbidden());
		this.imports.send("ownerton", other, file, MAPPING).andExpect(status().isForbidden());
	}

	private static byte[] file(String rows) {
		return (HEADER + rows.replace("\n", "\r\n")).getBytes(StandardCharsets.UTF_8);
	}

	private static void assertCounts(DocumentContext job, int rows, int accepted, int rejected, int already) {
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("status", "done")
			.containsEntry("rows", rows)
			.containsEntry("accepted", accepted)
			.containsEntry("rejected", rejected)
			.containsEntry("alreadyImported", already);
	}

}
