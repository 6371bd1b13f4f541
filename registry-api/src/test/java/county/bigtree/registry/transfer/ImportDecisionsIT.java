package county.bigtree.registry.transfer;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import com.jayway.jsonpath.DocumentContext;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.hasItem;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What a coordinator decides on an import after its end.
 */
@RegistryTest
class ImportDecisionsIT {

	private static final String MAPPING = """
			{"measuredOn": "2024-05-01", "basis": "An invented list", "columns": {"species": "name", "tag": "no",
			 "girth": {"column": "girth", "method": "tape", "unit": "in"}, "height": {"column": "height", "unit": "ft"},
			 "crown": {"column": "crown", "unit": "ft"}, "latitude": {"constant": "40.5"},
			 "longitude": {"constant": "-87.5"}}, "locationAccuracyMetres": 20000}""";

	private static final String WHY = "{\"reason\": \"The wrong list.\"}";

	private final ImportClient imports;

	@Autowired
	private JdbcClient jdbc;

	private final TestPeople people;

	@Autowired
	private Journal journal;

	@Autowired
	private Facts facts;

	@Autowired
	private RunImport runner;

	@Autowired
	private List<RegisterCheck> checks;

	@Autowired
	private TransactionTemplate transaction;

	ImportDecisionsIT(@Autowired MockMvc mvc, @Autowired TestPeople people) {
		this.imports = new ImportClient(mvc, people);
		this.people = people;
	}

	@Test
	void matchesAnUnknownNameOnceForAllItsRows() throws Exception {
		TestPerson coordinator = this.imports.county("namington", "IDA", "");
		byte[] file = file("""
				N1,Old man oak,100,80,40
				N2,Quercus alba,90,80,40
				N3,Nulla talis,100,80,40
				N4,Old man oak,110,80,40
				N5,Old man apple,100,20,40
				""");
		DocumentContext job = this.imports.run("namington", coordinator, file, MAPPING);
		assertCounts(job, 1, 0, 4, 0, 0);
		String path = path(job);
		List<Map<String, Object>> names = JsonPath
			.parse(this.imports.read(path + "/unknown-names?limit=2", coordinator))
			.read("$.items");
		assertThat(names).extracting((name) -> name.get("name") + " " + name.get("rows") + " " + name.get("firstRow"))
			.containsExactly("Nulla talis 1 4", "Old man apple 1 6");
		match(path, coordinator, "Old man oak", "quercus-alba").andExpect(status().isAccepted());
		assertCounts(settled(path, coordinator, 2), 3, 0, 2, 0, 0);
		match(path, coordinator, "Old man apple", "malus-spp").andExpect(status().isAccepted());
		assertCounts(settled(path, coordinator, 1), 3, 1, 1, 0, 0);
		this.imports.ask("/api/v1/counties/namington/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.total").value(3))
			.andExpect(jsonPath("$.items[0].tag").value("N4"));
		match(path, coordinator, "Old man oak", "quercus-rubra").andExpect(status().isConflict());
		match(path, coordinator, "Nobody's oak", "quercus-rubra").andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/name"));
		match(path, coordinator, "Nulla talis", "nulla-talis").andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/species"));
		assertCounts(this.imports.run("namington", coordinator, file, MAPPING), 0, 0, 1, 0, 4);
		assertThat(faultsIn("namington")).isEmpty();
	}

	@Test
	void matchesNoNameOfADryRun() throws Exception {
		TestPerson coordinator = this.imports.county("nameless", "IDB", "");
		DocumentContext job = this.imports.run("nameless", coordinator, file("D1,Old man oak,100,80,40\n"),
				MAPPING.replace("{\"measuredOn\"", "{\"dryRun\": true, \"measuredOn\""));
		assertCounts(job, 0, 0, 1, 0, 0);
		match(path(job), coordinator, "Old man oak", "quercus-alba").andExpect(status().isConflict());
		this.imports.decide(path(job), "/withdrawal", coordinator, WHY).andExpect(status().isConflict());
	}

	/** 60 rows: more than are taken off at once. */
	@Test
	void takesAnImportBackWholeSoThatItsRowsMayComeAgain() throws Exception {
		TestPerson coordinator = this.imports.county("backton", "IDC", "");
		this.imports.run("backton", coordinator, file("A1,Quercus alba,50,40,20\n"), MAPPING);
		StringBuilder rows = new StringBuilder("B0,Old man oak,99,80,40\nB1,Malus sp.,99,80,40\n");
		for (int row = 2; row < 60; row++) {
			rows.append("B%d,Quercus alba,%d,80,40\n".formatted(row, 60 + row));
		}
		String path = path(this.imports.run("backton", coordinator, file(rows.toString()), MAPPING));
		assertChampion("B59", coordinator);
		this.imports.decide(path, "/withdrawal?dryRun=true", coordinator, WHY)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.changes[*].titles.ended[*].tag").value(hasItem("B59")))
			.andExpect(jsonPath("$.changes[*].titles.began[*].tag").value(hasItem("A1")));
		assertChampion("B59", coordinator);
		this.imports.decide(path, "/withdrawal", coordinator, WHY).andExpect(status().isAccepted());
		DocumentContext job = settled(path, coordinator, 0);
		assertThat(job.<String>read("$.status")).isEqualTo("withdrawn");
		assertChampion("A1", coordinator);
		assertThat(this.jdbc.sql("""
				select t.tag || ' ' || s.ended from title_span s join tree t on t.id = s.tree
				where s.county = 'backton' and s.ended = 'taken-off' and s.title = 'champion'""")
			.query(String.class)
			.list()).containsExactly("B59 taken-off");
		assertThat(this.jdbc.sql("""
				select count(*) from title_span s where county = 'backton' and from_at >=
				  (select recorded_at from import_withdrawal where county = 'backton')""").query(Long.class).single())
			.as("titles begun by the withdrawal")
			.isOne();
		assertThat(faultsIn("backton")).isEmpty();
		this.imports.decide(path, "/withdrawal", coordinator, WHY).andExpect(status().isConflict());
		match(path, coordinator, "Old man oak", "quercus-alba").andExpect(status().isConflict());
		assertCounts(this.imports.run("backton", coordinator, file(rows.toString()), MAPPING), 58, 1, 1, 0, 0);
		assertThat(faultsIn("backton")).isEmpty();
	}

	@Test
	void takesNoImportBackOfWhichATreeHasGotFurtherFactsAndSaysWhich() throws Exception {
		TestPerson coordinator = this.imports.county("furtherton", "IDD", "");
		String path = path(this.imports.run("furtherton", coordinator,
				file("F1,Quercus alba,100,80,40\nF2,Quercus alba,90,80,40\n"), MAPPING));
		this.imports
			.decide("/api/v1/trees/F2", "/identifications", coordinator,
					"{\"species\": \"quercus-rubra\", \"by\": \"leaf\", \"reason\": \"Seen in leaf.\"}")
			.andExpect(status().isOk());
		this.imports.decide(path, "/withdrawal", coordinator, WHY)
			.andExpect(status().isConflict())
			.andExpect(jsonPath("$.trees.length()").value(1))
			.andExpect(jsonPath("$.trees[0].tag").value("F2"))
			.andExpect(jsonPath("$.trees[0].facts").value("identification"));
		assertThat(
				this.jdbc.sql("select count(*) from taking_off where county = 'furtherton'").query(Long.class).single())
			.isZero();
	}

	/** Planning one is enough: somebody is on the way to that tree. */
	@Test
	void takesNoImportBackWhileAVisitToATreeOfItIsPlanned() throws Exception {
		TestPerson coordinator = this.imports.county("visitington", "IDF", "");
		String path = path(this.imports.run("visitington", coordinator, file("VP1,Quercus alba,100,80,40\n"), MAPPING));
		this.imports.post("/api/v1/visits", coordinator, "{\"tree\": \"VP1\", \"purpose\": \"remeasure\"}", null)
			.andExpect(status().isCreated());
		this.imports.decide(path, "/withdrawal", coordinator, WHY)
			.andExpect(status().isConflict())
			.andExpect(jsonPath("$.trees[0].facts").value("visit planned"));
	}

	/**
	 * Its trees come off some time after the decision: by then one may have been merged
	 * into a tree of another county, whose title goes with the figures that were its.
	 */
	@Test
	void takesATreeOffThatWasMergedIntoOneOfAnotherCountyMeanwhile() throws Exception {
		TestPerson coordinator = this.imports.county("hereton", "IDG", "");
		TestPerson there = this.imports.county("thereton", "IDH", "");
		this.imports.run("thereton", there, file("TM1,Quercus alba,50,80,40\nTM2,Quercus alba,100,80,40\n"), MAPPING);
		DocumentContext job = this.imports.run("hereton", coordinator, file("HM1,Quercus alba,200,80,40\n"), MAPPING);
		UUID by = this.jdbc.sql("select started_by from import_job where id = ?::uuid")
			.param(job.<String>read("$.id"))
			.query(UUID.class)
			.single();
		this.transaction.executeWithoutResult((status) -> {
			Change change = this.journal.open("hereton");
			this.facts.append(change, FactTable.IMPORT_WITHDRAWAL, "job", UUID.fromString(job.read("$.id")),
					"by_person", by);
			this.journal.close(change, "import-withdrawn", by);
		});
		this.imports
			.decide("/api/v1/trees/HM1", "/merge",
					this.people.with(CountyRole.of("hereton", Role.COORDINATOR),
							CountyRole.of("thereton", Role.COORDINATOR)),
					"{\"into\": \"TM1\", \"reason\": \"One tree.\"}")
			.andExpect(status().isOk());
		assertTitle("thereton", "TM1", coordinator);
		this.runner.run(UUID.fromString(job.read("$.id")));
		assertThat(JsonPath.parse(this.imports.read(path(job), coordinator)).<String>read("$.status"))
			.isEqualTo("withdrawn");
		assertTitle("thereton", "TM2", coordinator);
		assertThat(faultsIn("hereton")).isEmpty();
		assertThat(faultsIn("thereton")).isEmpty();
	}

	@Test
	void decidesOnlyOnThePresentStateOfAnImport() throws Exception {
		TestPerson coordinator = this.imports.county("staleton", "IDE", "");
		String path = path(this.imports.run("staleton", coordinator, file("S1,Old man oak,100,80,40\n"), MAPPING));
		this.imports.post(path + "/withdrawal", coordinator, WHY, null).andExpect(status().isPreconditionRequired());
		String before = this.imports.ask(path, coordinator).andReturn().getResponse().getHeader("ETag");
		match(path, coordinator, "Old man oak", "quercus-alba").andExpect(status().isAccepted());
		this.imports.post(path + "/withdrawal", coordinator, WHY, before)
			.andExpect(status().isPreconditionFailed())
			.andExpect(jsonPath("$.present.county").value("staleton"));
	}

	private org.springframework.test.web.servlet.ResultActions match(String path, TestPerson person, String name,
			String species) throws Exception {
		return this.imports.post(path + "/unknown-names", person,
				"{\"name\": \"%s\", \"species\": \"%s\"}".formatted(name, species), null);
	}

	/** Waits until so many rows wait, and nothing is being taken off. */
	private DocumentContext settled(String path, TestPerson person, int waiting) throws Exception {
		Instant end = Instant.now().plus(Duration.ofSeconds(60));
		DocumentContext job = JsonPath.parse(this.imports.read(path, person));
		while (job.<Integer>read("$.waiting") != waiting || job.read("$.status").equals("withdrawing")) {
			assertThat(Instant.now()).as(job.jsonString()).isBefore(end);
			Thread.sleep(50);
			job = JsonPath.parse(this.imports.read(path, person));
		}
		return job;
	}

	private void assertChampion(String tag, TestPerson reader) throws Exception {
		assertTitle("backton", tag, reader);
	}

	private void assertTitle(String county, String tag, TestPerson reader) throws Exception {
		this.imports.ask("/api/v1/counties/" + county + "/species/quercus-alba/standing", reader)
			.andExpect(jsonPath("$.items[0].tag").value(tag))
			.andExpect(jsonPath("$.items[0].title").value("champion"));
	}

	/** What the checks of the whole register say of one county. */
	private List<String> faultsIn(String county) {
		List<String> faults = new ArrayList<>();
		this.transaction.executeWithoutResult((status) -> this.checks
			.forEach((check) -> check.look(new Findings(Integer.MAX_VALUE, faults::add, (looked) -> {
			}))));
		return faults.stream().filter((fault) -> fault.contains(county)).toList();
	}

	private static String path(DocumentContext job) {
		return "/api/v1/imports/" + job.<String>read("$.id");
	}

	private static byte[] file(String rows) {
		return ("no,name,girth,height,crown\r\n" + rows.replace("\n", "\r\n")).getBytes(StandardCharsets.UTF_8);
	}

	private static void assertCounts(DocumentContext job, int accepted, int kept, int waiting, int rejected,
			int already) {
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("status", "done")
			.containsEntry("accepted", accepted)
			.containsEntry("kept", kept)
			.containsEntry("waiting", waiting)
			.containsEntry("rejected", rejected)
			.containsEntry("alreadyImported", already);
	}

}
