package county.bigtree.registry.transfer;

import java.util.List;

import com.jayway.jsonpath.DocumentContext;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Days and visits of rows, and rows that lack figures. Points: girth in inches + height
 * in feet + a quarter of the spread in feet (common practice, no source); height 80 ft
 * and spread 40 ft add 90.
 */
@RegistryTest
class VisitsOfRowsIT {

	private final ImportClient imports;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private Faults faults;

	VisitsOfRowsIT(@Autowired MockMvc mvc, @Autowired TestPeople people) {
		this.imports = new ImportClient(mvc, people);
	}

	@Test
	void readsADayForEachRow() throws Exception {
		TestPerson coordinator = this.imports.county("dayston", "IVA", "");
		DocumentContext job = this.imports.run("dayston", coordinator, OlderFiles.file(OlderFiles.HEADER + """
				QD1,6/14/1998,100,80,40,
				QD2,June 1999,90,80,40,
				QD3,2000,80,80,40,
				QD4,,70,80,40,
				QD5,6/14/98,70,80,40,
				QD6,2999,70,80,40,
				"""), OlderFiles.ONE_VISIT);
		OlderFiles.assertCounts(job, 3, 0, 0, 3, 0);
		assertThat(this.imports.read(OlderFiles.path(job) + "/rejected.csv", coordinator)).contains("5,day: is missing",
				"6,day: must name the year with four digits but was 6/14/98",
				"7,\"day: must be over: from 1800-01-01 to ");
		assertThat(OlderFiles.measurements(this.jdbc, "dayston")).containsExactly("QD1 1998-06-14 - 190",
				"QD2 1999-06-30 month 180", "QD3 2000-12-31 year 170");
	}

	@Test
	void takesTheDayOfTheMappingWhereTheRowNamesNone() throws Exception {
		TestPerson coordinator = this.imports.county("defaulton", "IVB", "");
		DocumentContext job = this.imports.run("defaulton", coordinator, OlderFiles.file(OlderFiles.HEADER + """
				QE1,,100,80,40,
				QE2,2001-05-02,90,80,40,
				"""), OlderFiles.ONE_VISIT.replace("{\"basis\"", "{\"measuredOn\": \"1997\", \"basis\""));
		OlderFiles.assertCounts(job, 2, 0, 0, 0, 0);
		assertThat(OlderFiles.measurements(this.jdbc, "defaulton")).containsExactly("QE1 1997-12-31 year 190",
				"QE2 2001-05-02 - 180");
	}

	@Test
	void takesSeveralVisitsInOneRow() throws Exception {
		TestPerson coordinator = this.imports.county("severalton", "IVC", "");
		byte[] file = OlderFiles.file(OlderFiles.TWO_HEADER + """
				QV1,1998,100,80,40,110,80,40
				QV2,1998,100,80,40,,,
				QV3,,,,,90,80,40
				QV4,1998,100,80,,,,
				QV5,,,,,,,
				QV6,5/31/2015,100,80,40,101,80,40
				""");
		DocumentContext job = this.imports.run("severalton", coordinator, file, OlderFiles.TWO_VISITS);
		OlderFiles.assertCounts(job, 3, 0, 0, 3, 0);
		assertThat(this.imports.read(OlderFiles.path(job) + "/rejected.csv", coordinator)).contains(
				"5,c1: is missing,QV4", "6,no visit has a figure,QV5",
				"7,\"two visits are of the same day, 2015-05\",QV6");
		assertThat(OlderFiles.measurements(this.jdbc, "severalton")).containsExactly("QV1 1998-12-31 year 190",
				"QV1 2015-05-31 month 200", "QV2 1998-12-31 year 190", "QV3 2015-05-31 month 180");
		this.imports.ask("/api/v1/trees/QV1", coordinator)
			.andExpect(jsonPath("$.score.points").value(200.0))
			.andExpect(jsonPath("$.score.effectiveOn").value("2015-05-31"));
		this.imports.ask("/api/v1/trees/QV1/scores", coordinator)
			.andExpect(jsonPath("$.items[*].points", contains(200.0, 190.0)));
		this.imports.ask("/api/v1/trees/QV1/story", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items[0].facts[*].kind", hasItems("imported", "imported")));
		this.imports.ask("/trees/QV1", coordinator).andExpect(status().isOk());
		OlderFiles.assertCounts(this.imports.run("severalton", coordinator, file, OlderFiles.TWO_VISITS), 0, 0, 0, 3,
				3);
		assertThat(this.faults.in("severalton")).isEmpty();
	}

	@Test
	void keepsIncompleteRowsAsTreesToBeMeasured() throws Exception {
		TestPerson coordinator = this.imports.county("keepington", "IVG", "");
		String mapping = OlderFiles.ONE_VISIT.replace("{\"basis\"", "{\"incomplete\": \"keep\", \"basis\"");
		byte[] file = OlderFiles.file(OlderFiles.HEADER + """
				QI1,2024-05-01,100,80,40,
				QI2,2024-05-01,100,,40,
				QI3,2024-05-01,much,80,40,
				QI4,2024-05-01,,,,
				QI5,someday,100,80,40,
				""");
		OlderFiles.assertCounts(this.imports.run("keepington", coordinator, file,
				OlderFiles.ONE_VISIT.replace("{\"basis\"", "{\"dryRun\": true, \"basis\"")), 1, 0, 0, 4, 0);
		DocumentContext job = this.imports.run("keepington", coordinator, file, mapping);
		OlderFiles.assertCounts(job, 1, 4, 0, 0, 0);
		assertThat(JsonPath.parse(this.imports.read(OlderFiles.path(job) + "/notes", coordinator))
			.<List<String>>read("$.items[*].note")).hasSize(4).first().isEqualTo("height: is missing");
		assertThat(OlderFiles.measurements(this.jdbc, "keepington")).containsExactly("QI1 2024-05-01 - 190",
				"QI2 2024-05-01 - null", "QI3 2024-05-01 - null");
		this.imports.ask("/api/v1/trees/QI4", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.score").value(nullValue()));
		OlderFiles.assertCounts(this.imports.run("keepington", coordinator, file, mapping), 0, 0, 0, 0, 5);
		DocumentContext mended = this.imports.run("keepington", coordinator, OlderFiles.file(OlderFiles.HEADER + """
				QI2,2024-05-01,100,80,40,
				QI4,2024-05-02,90,80,40,
				"""), mapping);
		OlderFiles.assertCounts(mended, 0, 0, 2, 0, 0);
		this.imports.ask("/api/v1/counties/keepington/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].tag", contains("QI1", "QI2", "QI4")));
		assertThat(this.faults.in("keepington")).isEmpty();
	}

	@Test
	void refusesMappingsOfVisitsThatDoNotFit() throws Exception {
		TestPerson coordinator = this.imports.county("unfitton", "IVH", "");
		byte[] file = OlderFiles.file(OlderFiles.TWO_HEADER);
		this.imports.send("unfitton", coordinator, file, OlderFiles.TWO_VISITS.replace("\"measuredOn\": \"d1\", ", ""))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[*].pointer", contains("#/measuredOn")));
		this.imports
			.send("unfitton", coordinator, file,
					OlderFiles.TWO_VISITS.replace("\"tag\": \"no\"", "\"tag\": \"no\", \"measuredOn\": \"d1\"")
						.replace("{\"column\": \"h2\"", "{\"column\": \"h9\"")
						.replace("{\"basis\"", "{\"incomplete\": \"maybe\", \"basis\""))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[*].pointer", contains("#/incomplete", "#/visits", "#/visits/1/height")));
		this.imports
			.send("unfitton", coordinator, file,
					OlderFiles.TWO_VISITS.replace("{\"basis\"", "{\"measuredOn\": \"June 1998\", \"basis\""))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/measuredOn"));
	}

}
