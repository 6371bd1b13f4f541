package county.bigtree.registry.transfer;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import com.jayway.jsonpath.DocumentContext;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
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

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Rows of trees that an earlier file brought. Points: girth in inches + height in feet +
 * a quarter of the spread in feet (common practice, no source); height 80 ft and spread
 * 40 ft add 90.
 */
@RegistryTest
class ChangedRowsIT {

	private final ImportClient imports;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private Faults faults;

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
	void addsWhatChangedToTheTreeThatIsThere() throws Exception {
		TestPerson coordinator = this.imports.county("changeton", "IVD", "");
		byte[] first = OlderFiles.file(OlderFiles.HEADER + """
				QC1,2010-05-01,100,80,40,
				QC2,2010-05-01,90,80,40,
				QC3,2010-05-01,80,80,40,
				""");
		OlderFiles.assertCounts(this.imports.run("changeton", coordinator, first, OlderFiles.ONE_VISIT), 3, 0, 0, 0, 0);
		byte[] second = OlderFiles.file(OlderFiles.HEADER + """
				QC1,2012-05-01,105,80,40,
				QC2,5/1/2010,7' 7\"\"\",80 ft,40,
				QC3,2010-05-01,80,80.0,40',
				QC4,2012-05-01,70,80,40,
				""".replace("7' 7", "\"7' 7"));
		DocumentContext dry = this.imports.run("changeton", coordinator, second,
				OlderFiles.ONE_VISIT.replace("{\"basis\"", "{\"dryRun\": true, \"basis\""));
		OlderFiles.assertCounts(dry, 1, 0, 2, 0, 1);
		DocumentContext job = this.imports.run("changeton", coordinator, second, OlderFiles.ONE_VISIT);
		OlderFiles.assertCounts(job, 1, 0, 2, 0, 1);
		assertThat(OlderFiles.measurements(this.jdbc, "changeton")).containsExactly("QC1 2010-05-01 - 190",
				"QC1 2012-05-01 - 195", "QC2 2010-05-01 - 180", "QC2 2010-05-01 - 181", "QC3 2010-05-01 - 170",
				"QC4 2012-05-01 - 160");
		this.imports.ask("/api/v1/counties/changeton/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].tag", contains("QC1", "QC2", "QC3", "QC4")))
			.andExpect(jsonPath("$.items[*].points", contains(195.0, 181.0, 170.0, 160.0)));
		OlderFiles.assertCounts(this.imports.run("changeton", coordinator, second, OlderFiles.ONE_VISIT), 0, 0, 0, 0,
				4);
		assertThat(this.faults.in("changeton")).isEmpty();
		this.imports.decide(OlderFiles.path(job), "/withdrawal", coordinator, "{\"reason\": \"The wrong list.\"}")
			.andExpect(status().isAccepted());
		assertThat(settled(OlderFiles.path(job), coordinator).<String>read("$.status")).isEqualTo("withdrawn");
		this.imports.ask("/api/v1/counties/changeton/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].tag", contains("QC1", "QC2", "QC3")))
			.andExpect(jsonPath("$.items[*].points", contains(190.0, 180.0, 170.0)));
		assertThat(this.faults.in("changeton")).isEmpty();
		OlderFiles.assertCounts(this.imports.run("changeton", coordinator, second, OlderFiles.ONE_VISIT), 1, 0, 2, 0,
				1);
		assertThat(this.faults.in("changeton")).isEmpty();
	}

	@Test
	void addsToTheTreeIntoWhichOneWasMerged() throws Exception {
		TestPerson coordinator = this.imports.county("mergeton", "IVE", "");
		this.imports.run("mergeton", coordinator,
				OlderFiles.file(OlderFiles.HEADER + "QM1,2010,100,80,40,\nQM2,2010,90,80,40,\n"), OlderFiles.ONE_VISIT);
		this.imports
			.decide("/api/v1/trees/QM1", "/merge", coordinator, "{\"into\": \"QM2\", \"reason\": \"One tree.\"}")
			.andExpect(status().isOk());
		OlderFiles.assertCounts(this.imports.run("mergeton", coordinator,
				OlderFiles.file(OlderFiles.HEADER + "QM1,2014,120,80,40,\n"), OlderFiles.ONE_VISIT), 0, 0, 1, 0, 0);
		this.imports.ask("/api/v1/trees/QM2", coordinator).andExpect(jsonPath("$.score.points").value(210.0));
		assertThat(this.faults.in("mergeton")).isEmpty();
	}

	@Test
	void takesNothingTwiceWhenASliceIsTriedAgain() throws Exception {
		TestPerson coordinator = this.imports.county("sliceton", "IVI", "");
		this.imports.run("sliceton", coordinator,
				OlderFiles.file(OlderFiles.HEADER + "QL1,2010,100,80,40,\nQL2,2010,90,80,40,\n"), OlderFiles.ONE_VISIT);
		byte[] file = OlderFiles.file(OlderFiles.HEADER
				+ "QL1,2014,110,80,40,\nQL2,2014,90,80,40,dead\nQL3,2014,80,80,40,\nQL4,2014,,80,40,\n");
		TableFile table = TableFile.of(file);
		UUID id = Uuid7.next();
		this.jobs.queue(id, "sliceton", coordinator.id(),
				new ImportJobs.Sent(OlderFiles.ONE_VISIT, table.header(), file), false, 4);
		ImportJob job = this.jobs.find(id).orElseThrow();
		ImportPlan plan = this.jobs.plan(id);
		RowReader reader = this.jobs.reader(job, plan, this.catalogue);
		List<FileRow> rows = new ArrayList<>();
		table.forEach((row) -> rows.add(reader.read(row)));
		ImportJob.Counts counts = new ImportJob.Counts(1, 0, 2, 0, 1, 0);
		assertThat(this.slices.record(job, plan, rows, ImportJob.Counts.NONE)).isEqualTo(counts);
		List<String> measurements = OlderFiles.measurements(this.jdbc, "sliceton");
		assertThat(measurements).hasSize(5);
		assertThat(this.slices.record(job, plan, rows, ImportJob.Counts.NONE)).isEqualTo(counts);
		this.running.run(id);
		OlderFiles.assertCounts(JsonPath.parse(this.imports.read("/api/v1/imports/" + id, coordinator)), 1, 0, 2, 1, 0);
		assertThat(OlderFiles.measurements(this.jdbc, "sliceton")).isEqualTo(measurements);
		assertThat(this.faults.in("sliceton")).isEmpty();
	}

	@Test
	void leavesATreeAloneThatIsAnotherSpeciesOrStandsElsewhereByNow() throws Exception {
		TestPerson coordinator = this.imports.county("movington", "IVJ", "");
		this.imports.county("farington", "IVK", "");
		this.imports.run("movington", coordinator,
				OlderFiles.file(OlderFiles.HEADER + "QN1,2010,100,80,40,\nQN2,2010,90,80,40,\n"), OlderFiles.ONE_VISIT);
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
				OlderFiles.file(OlderFiles.HEADER + "QN1,2014,100,80,40,\nQN2,2014,90,80,40,\n"), OlderFiles.ONE_VISIT);
		OlderFiles.assertCounts(job, 0, 0, 1, 0, 1);
		assertThat(JsonPath.parse(this.imports.read(OlderFiles.path(job) + "/notes", coordinator))
			.<List<String>>read("$.items[*].note"))
			.containsExactly("its tree is on the books as quercus-rubra, and not as quercus-alba",
					"its tree stands in farington by now, so that what is new here is for the coordinators there");
		assertThat(this.faults.in("movington")).isEmpty();
	}

	@Test
	void takesTheConditionOverAndEndsATitleByIt() throws Exception {
		TestPerson coordinator = this.imports.county("sightton", "IVF", "");
		DocumentContext first = this.imports.run("sightton", coordinator, OlderFiles.file(OlderFiles.HEADER + """
				QS1,2024-05-01,100,80,40,good
				QS2,2024-05-01,90,80,40,Declining.
				QS3,2024-05-01,80,80,40,cut down
				QS4,2024-05-01,70,80,40,leafy
				"""), OlderFiles.ONE_VISIT);
		OlderFiles.assertCounts(first, 4, 0, 0, 0, 0);
		assertThat(JsonPath.parse(this.imports.read(OlderFiles.path(first) + "/notes", coordinator))
			.<List<String>>read("$.items[*].note")).containsExactly("state: is not understood and was left out: leafy");
		this.imports.ask("/api/v1/counties/sightton/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].tag", contains("QS1", "QS2", "QS4")));
		byte[] second = OlderFiles
			.file(OlderFiles.HEADER + "QS1,2025-05-01,100,80,40,fallen\nQS2,2024-05-01,90,80,40,declining\n");
		DocumentContext job = this.imports.run("sightton", coordinator, second, OlderFiles.ONE_VISIT);
		OlderFiles.assertCounts(job, 0, 0, 1, 0, 1);
		assertThat(this.jdbc.sql("""
				select t.tag || ' ' || coalesce(s.ended, 'holds') from title_span s join tree t on t.id = s.tree
				where s.county = 'sightton' order by t.tag""").query(String.class).list()).containsExactly("QS1 fell",
				"QS2 holds");
		OlderFiles.assertCounts(this.imports.run("sightton", coordinator, second, OlderFiles.ONE_VISIT), 0, 0, 0, 0, 2);
		assertThat(this.faults.in("sightton")).isEmpty();
		this.imports.decide(OlderFiles.path(job), "/withdrawal", coordinator, "{\"reason\": \"The wrong list.\"}")
			.andExpect(status().isConflict())
			.andExpect(jsonPath("$.trees[0].facts").value("condition report"));
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

}
