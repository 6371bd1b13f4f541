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
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Rows of days, of several visits and of figures that changed since an earlier file.
 * Points: girth in inches + height in feet + a quarter of the spread in feet (common
 * practice, no source); height 80 ft and spread 40 ft add 90.
 */
@RegistryTest
class ChangedRowsIT {

	private static final String START = """
			{"basis": "An invented list", "rowKey": "no", "locationAccuracyMetres": 20000, %s
			 "columns": {"species": {"constant": "Quercus alba"}, "tag": "no", "latitude": {"constant": "40.5"},
			 "longitude": {"constant": "-87.5"}%s}}""";

	private static final String FIGURES = """
			"girth": {"column": "%s", "method": "tape", "unit": "in"}, "height": {"column": "%s", "unit": "ft"},
			"crown": {"column": "%s", "unit": "ft"}""";

	private static final String ONE_VISIT = START.formatted("",
			", \"measuredOn\": \"day\", \"condition\": \"state\", " + FIGURES.formatted("girth", "height", "crown"));

	private static final String HEADER = "no,day,girth,height,crown,state\n";

	private static final String TWO_VISITS = START
		.formatted("\"visits\": [{\"measuredOn\": \"d1\", %s}, {\"measuredOn\": {\"constant\": \"May 2015\"}, %s}],"
			.formatted(FIGURES.formatted("g1", "h1", "c1"), FIGURES.formatted("g2", "h2", "c2")), "");

	private static final String TWO_HEADER = "no,d1,g1,h1,c1,g2,h2,c2\n";

	private final ImportClient imports;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private List<RegisterCheck> checks;

	@Autowired
	private TransactionTemplate transaction;

	private final TestPeople people;

	@Autowired
	private ImportJobs jobs;

	@Autowired
	private RecordSlice slices;

	@Autowired
	private RunImport running;

	@Autowired
	private SpeciesCatalogue catalogue;

	ChangedRowsIT(@Autowired MockMvc mvc, @Autowired TestPeople people) {
		this.imports = new ImportClient(mvc, people);
		this.people = people;
	}

	@Test
	void readsADayForEachRow() throws Exception {
		TestPerson coordinator = this.imports.county("dayston", "IVA", "");
		DocumentContext job = this.imports.run("dayston", coordinator, file(HEADER + """
				QD1,6/14/1998,100,80,40,
				QD2,June 1999,90,80,40,
				QD3,2000,80,80,40,
				QD4,,70,80,40,
				QD5,6/14/98,70,80,40,
				QD6,2999,70,80,40,
				"""), ONE_VISIT);
		assertCounts(job, 3, 0, 0, 3, 0);
		assertThat(this.imports.read(path(job) + "/rejected.csv", coordinator)).contains("5,day: is missing",
				"6,day: must name the year with four digits but was 6/14/98",
				"7,\"day: must be over: from 1800-01-01 to ");
		assertThat(measurements("dayston")).containsExactly("QD1 1998-06-14 - 190", "QD2 1999-06-30 month 180",
				"QD3 2000-12-31 year 170");
	}

	@Test
	void takesTheDayOfTheMappingWhereTheRowNamesNone() throws Exception {
		TestPerson coordinator = this.imports.county("defaulton", "IVB", "");
		DocumentContext job = this.imports.run("defaulton", coordinator, file(HEADER + """
				QE1,,100,80,40,
				QE2,2001-05-02,90,80,40,
				"""), ONE_VISIT.replace("{\"basis\"", "{\"measuredOn\": \"1997\", \"basis\""));
		assertCounts(job, 2, 0, 0, 0, 0);
		assertThat(measurements("defaulton")).containsExactly("QE1 1997-12-31 year 190", "QE2 2001-05-02 - 180");
	}

	@Test
	void takesSeveralVisitsInOneRow() throws Exception {
		TestPerson coordinator = this.imports.county("severalton", "IVC", "");
		byte[] file = file(TWO_HEADER + """
				QV1,1998,100,80,40,110,80,40
				QV2,1998,100,80,40,,,
				QV3,,,,,90,80,40
				QV4,1998,100,80,,,,
				QV5,,,,,,,
				QV6,5/31/2015,100,80,40,101,80,40
				""");
		DocumentContext job = this.imports.run("severalton", coordinator, file, TWO_VISITS);
		assertCounts(job, 3, 0, 0, 3, 0);
		assertThat(this.imports.read(path(job) + "/rejected.csv", coordinator)).contains("5,c1: is missing,QV4",
				"6,no visit has a figure,QV5", "7,\"two visits are of the same day, 2015-05\",QV6");
		assertThat(measurements("severalton")).containsExactly("QV1 1998-12-31 year 190", "QV1 2015-05-31 month 200",
				"QV2 1998-12-31 year 190", "QV3 2015-05-31 month 180");
		this.imports.ask("/api/v1/trees/QV1", coordinator)
			.andExpect(jsonPath("$.score.points").value(200.0))
			.andExpect(jsonPath("$.score.effectiveOn").value("2015-05-31"));
		this.imports.ask("/api/v1/trees/QV1/scores", coordinator)
			.andExpect(jsonPath("$.items[*].points", contains(200.0, 190.0)));
		assertCounts(this.imports.run("severalton", coordinator, file, TWO_VISITS), 0, 0, 0, 3, 3);
		assertThat(faultsIn("severalton")).isEmpty();
	}

	@Test
	void addsWhatChangedToTheTreeThatIsThere() throws Exception {
		TestPerson coordinator = this.imports.county("changeton", "IVD", "");
		byte[] first = file(HEADER + """
				QC1,2010-05-01,100,80,40,
				QC2,2010-05-01,90,80,40,
				QC3,2010-05-01,80,80,40,
				""");
		assertCounts(this.imports.run("changeton", coordinator, first, ONE_VISIT), 3, 0, 0, 0, 0);
		byte[] second = file(HEADER + """
				QC1,2012-05-01,105,80,40,
				QC2,5/1/2010,7' 7\"\"\",80 ft,40,
				QC3,2010-05-01,80,80.0,40',
				QC4,2012-05-01,70,80,40,
				""".replace("7' 7", "\"7' 7"));
		DocumentContext dry = this.imports.run("changeton", coordinator, second,
				ONE_VISIT.replace("{\"basis\"", "{\"dryRun\": true, \"basis\""));
		assertCounts(dry, 1, 0, 2, 0, 1);
		DocumentContext job = this.imports.run("changeton", coordinator, second, ONE_VISIT);
		assertCounts(job, 1, 0, 2, 0, 1);
		assertThat(measurements("changeton")).containsExactly("QC1 2010-05-01 - 190", "QC1 2012-05-01 - 195",
				"QC2 2010-05-01 - 180", "QC2 2010-05-01 - 181", "QC3 2010-05-01 - 170", "QC4 2012-05-01 - 160");
		this.imports.ask("/api/v1/counties/changeton/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].tag", contains("QC1", "QC2", "QC3", "QC4")))
			.andExpect(jsonPath("$.items[*].points", contains(195.0, 181.0, 170.0, 160.0)));
		assertCounts(this.imports.run("changeton", coordinator, second, ONE_VISIT), 0, 0, 0, 0, 4);
		assertThat(faultsIn("changeton")).isEmpty();
		this.imports.decide(path(job), "/withdrawal", coordinator, "{\"reason\": \"The wrong list.\"}")
			.andExpect(status().isAccepted());
		assertThat(settled(path(job), coordinator).<String>read("$.status")).isEqualTo("withdrawn");
		this.imports.ask("/api/v1/counties/changeton/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].tag", contains("QC1", "QC2", "QC3")))
			.andExpect(jsonPath("$.items[*].points", contains(190.0, 180.0, 170.0)));
		assertThat(faultsIn("changeton")).isEmpty();
		assertCounts(this.imports.run("changeton", coordinator, second, ONE_VISIT), 1, 0, 2, 0, 1);
		assertThat(faultsIn("changeton")).isEmpty();
	}

	@Test
	void addsToTheTreeIntoWhichOneWasMerged() throws Exception {
		TestPerson coordinator = this.imports.county("mergeton", "IVE", "");
		this.imports.run("mergeton", coordinator, file(HEADER + "QM1,2010,100,80,40,\nQM2,2010,90,80,40,\n"),
				ONE_VISIT);
		this.imports
			.decide("/api/v1/trees/QM1", "/merge", coordinator, "{\"into\": \"QM2\", \"reason\": \"One tree.\"}")
			.andExpect(status().isOk());
		assertCounts(this.imports.run("mergeton", coordinator, file(HEADER + "QM1,2014,120,80,40,\n"), ONE_VISIT), 0, 0,
				1, 0, 0);
		this.imports.ask("/api/v1/trees/QM2", coordinator).andExpect(jsonPath("$.score.points").value(210.0));
		assertThat(faultsIn("mergeton")).isEmpty();
	}

	@Test
	void takesNothingTwiceWhenASliceIsTriedAgain() throws Exception {
		TestPerson coordinator = this.imports.county("sliceton", "IVI", "");
		this.imports.run("sliceton", coordinator, file(HEADER + "QL1,2010,100,80,40,\nQL2,2010,90,80,40,\n"),
				ONE_VISIT);
		byte[] file = file(
				HEADER + "QL1,2014,110,80,40,\nQL2,2014,90,80,40,dead\nQL3,2014,80,80,40,\nQL4,2014,,80,40,\n");
		TableFile table = TableFile.of(file);
		UUID id = Uuid7.next();
		this.jobs.queue(id, "sliceton", coordinator.id(), new ImportJobs.Sent(ONE_VISIT, table.header(), file), false,
				4);
		ImportJob job = this.jobs.find(id).orElseThrow();
		ImportPlan plan = this.jobs.plan(id);
		RowReader reader = this.jobs.reader(job, plan, this.catalogue);
		List<FileRow> rows = new ArrayList<>();
		table.forEach((row) -> rows.add(reader.read(row)));
		ImportJob.Counts counts = new ImportJob.Counts(1, 0, 2, 0, 1, 0);
		assertThat(this.slices.record(job, plan, rows, ImportJob.Counts.NONE)).isEqualTo(counts);
		List<String> measurements = measurements("sliceton");
		assertThat(measurements).hasSize(5);
		assertThat(this.slices.record(job, plan, rows, ImportJob.Counts.NONE)).isEqualTo(counts);
		this.running.run(id);
		assertCounts(JsonPath.parse(this.imports.read("/api/v1/imports/" + id, coordinator)), 1, 0, 2, 1, 0);
		assertThat(measurements("sliceton")).isEqualTo(measurements);
		assertThat(faultsIn("sliceton")).isEmpty();
	}

	@Test
	void leavesATreeAloneThatIsAnotherSpeciesOrStandsElsewhereByNow() throws Exception {
		TestPerson coordinator = this.imports.county("movington", "IVJ", "");
		this.imports.county("farington", "IVK", "");
		this.imports.run("movington", coordinator, file(HEADER + "QN1,2010,100,80,40,\nQN2,2010,90,80,40,\n"),
				ONE_VISIT);
		this.imports
			.decide("/api/v1/trees/QN1", "/identifications", coordinator,
					"{\"species\": \"quercus-rubra\", \"by\": \"leaf\", \"reason\": \"Seen in leaf.\"}")
			.andExpect(status().isOk());
		this.imports
			.decide("/api/v1/trees/QN2", "/location",
					this.people.with(CountyRole.of("movington", Role.COORDINATOR),
							CountyRole.of("farington", Role.COORDINATOR)),
					"""
							{"location": {"latitude": 41.5, "longitude": -87.5, "accuracyMetres": 20000}, "county": "farington",
							 "reason": "Over the line."}""")
			.andExpect(status().isOk());
		DocumentContext job = this.imports.run("movington", coordinator,
				file(HEADER + "QN1,2014,100,80,40,\nQN2,2014,90,80,40,\n"), ONE_VISIT);
		assertCounts(job, 0, 0, 1, 0, 1);
		assertThat(JsonPath.parse(this.imports.read(path(job) + "/notes", coordinator))
			.<List<String>>read("$.items[*].note"))
			.containsExactly("its tree is on the books as quercus-rubra, and not as quercus-alba",
					"its tree stands in farington by now, so that what is new here is for the coordinators there");
		assertThat(faultsIn("movington")).isEmpty();
	}

	@Test
	void takesTheConditionOverAndEndsATitleByIt() throws Exception {
		TestPerson coordinator = this.imports.county("sightton", "IVF", "");
		DocumentContext first = this.imports.run("sightton", coordinator, file(HEADER + """
				QS1,2024-05-01,100,80,40,good
				QS2,2024-05-01,90,80,40,Declining.
				QS3,2024-05-01,80,80,40,cut down
				QS4,2024-05-01,70,80,40,leafy
				"""), ONE_VISIT);
		assertCounts(first, 4, 0, 0, 0, 0);
		assertThat(JsonPath.parse(this.imports.read(path(first) + "/notes", coordinator))
			.<List<String>>read("$.items[*].note")).containsExactly("state: is not understood and was left out: leafy");
		this.imports.ask("/api/v1/counties/sightton/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].tag", contains("QS1", "QS2", "QS4")));
		byte[] second = file(HEADER + "QS1,2025-05-01,100,80,40,fallen\nQS2,2024-05-01,90,80,40,declining\n");
		DocumentContext job = this.imports.run("sightton", coordinator, second, ONE_VISIT);
		assertCounts(job, 0, 0, 1, 0, 1);
		assertThat(this.jdbc.sql("""
				select t.tag || ' ' || coalesce(s.ended, 'holds') from title_span s join tree t on t.id = s.tree
				where s.county = 'sightton' order by t.tag""").query(String.class).list()).containsExactly("QS1 fell",
				"QS2 holds");
		assertCounts(this.imports.run("sightton", coordinator, second, ONE_VISIT), 0, 0, 0, 0, 2);
		assertThat(faultsIn("sightton")).isEmpty();
		this.imports.decide(path(job), "/withdrawal", coordinator, "{\"reason\": \"The wrong list.\"}")
			.andExpect(status().isConflict())
			.andExpect(jsonPath("$.trees[0].facts").value("condition report"));
	}

	@Test
	void keepsIncompleteRowsAsTreesToBeMeasured() throws Exception {
		TestPerson coordinator = this.imports.county("keepington", "IVG", "");
		String mapping = ONE_VISIT.replace("{\"basis\"", "{\"incomplete\": \"keep\", \"basis\"");
		byte[] file = file(HEADER + """
				QI1,2024-05-01,100,80,40,
				QI2,2024-05-01,100,,40,
				QI3,2024-05-01,much,80,40,
				QI4,2024-05-01,,,,
				QI5,someday,100,80,40,
				""");
		assertCounts(this.imports.run("keepington", coordinator, file,
				ONE_VISIT.replace("{\"basis\"", "{\"dryRun\": true, \"basis\"")), 1, 0, 0, 4, 0);
		DocumentContext job = this.imports.run("keepington", coordinator, file, mapping);
		assertCounts(job, 1, 4, 0, 0, 0);
		assertThat(JsonPath.parse(this.imports.read(path(job) + "/notes", coordinator))
			.<List<String>>read("$.items[*].note")).hasSize(4).first().isEqualTo("height: is missing");
		assertThat(measurements("keepington")).containsExactly("QI1 2024-05-01 - 190", "QI2 2024-05-01 - null",
				"QI3 2024-05-01 - null");
		this.imports.ask("/api/v1/trees/QI4", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.score").value(nullValue()));
		assertCounts(this.imports.run("keepington", coordinator, file, mapping), 0, 0, 0, 0, 5);
		DocumentContext mended = this.imports.run("keepington", coordinator, file(HEADER + """
				QI2,2024-05-01,100,80,40,
				QI4,2024-05-02,90,80,40,
				"""), mapping);
		assertCounts(mended, 0, 0, 2, 0, 0);
		this.imports.ask("/api/v1/counties/keepington/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].tag", contains("QI1", "QI2", "QI4")));
		assertThat(faultsIn("keepington")).isEmpty();
	}

	@Test
	void refusesMappingsOfVisitsThatDoNotFit() throws Exception {
		TestPerson coordinator = this.imports.county("unfitton", "IVH", "");
		byte[] file = file(TWO_HEADER);
		this.imports.send("unfitton", coordinator, file, TWO_VISITS.replace("\"measuredOn\": \"d1\", ", ""))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[*].pointer", contains("#/measuredOn")));
		this.imports
			.send("unfitton", coordinator, file,
					TWO_VISITS.replace("\"tag\": \"no\"", "\"tag\": \"no\", \"measuredOn\": \"d1\"")
						.replace("{\"column\": \"h2\"", "{\"column\": \"h9\"")
						.replace("{\"basis\"", "{\"incomplete\": \"maybe\", \"basis\""))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[*].pointer", contains("#/incomplete", "#/visits", "#/visits/1/height")));
		this.imports
			.send("unfitton", coordinator, file,
					TWO_VISITS.replace("{\"basis\"", "{\"measuredOn\": \"June 1998\", \"basis\""))
			.andExpect(status().is4xxClientError());
	}

	private List<String> measurements(String county) {
		return this.jdbc.sql("""
				select t.tag || ' ' || m.measured_on || ' ' || coalesce(m.measured_on_known_to, '-') || ' '
				  || coalesce(round(r.points)::text, 'null')
				from measurement m join tree t on t.id = m.tree join reduction r on r.measurement = m.id
				where m.county = ? order by t.tag, m.measured_on, r.points""").param(county).query(String.class).list();
	}

	private DocumentContext settled(String path, TestPerson person) throws Exception {
		Instant end = Instant.now().plus(Duration.ofSeconds(60));
		DocumentContext job = JsonPath.parse(this.imports.read(path, person));
		while (job.read("$.status").equals("withdrawing")) {
			assertThat(Instant.now()).as(job.jsonString()).isBefore(end);
			Thread.sleep(50);
			job = JsonPath.parse(this.imports.read(path, person));
		}
		return job;
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
		return rows.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8);
	}

	private static void assertCounts(DocumentContext job, int accepted, int kept, int changed, int rejected,
			int already) {
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("status", "done")
			.containsEntry("accepted", accepted)
			.containsEntry("kept", kept)
			.containsEntry("changed", changed)
			.containsEntry("rejected", rejected)
			.containsEntry("alreadyImported", already);
	}

}
