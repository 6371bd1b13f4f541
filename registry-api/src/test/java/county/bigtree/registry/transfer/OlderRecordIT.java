package county.bigtree.registry.transfer;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

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
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What an older record says beside its figures: private words, and points to compare.
 */
@RegistryTest
class OlderRecordIT {

	private static final String MAPPING = """
			{"measuredOn": "2014-05-01", "basis": "An invented list", "columns": {"species": {"constant": "Quercus alba"},
			 "tag": "no", "girth": {"column": "girth", "method": "tape", "unit": "in"},
			 "height": {"constant": "80", "unit": "ft"}, "crown": {"constant": "40", "unit": "ft"},
			 "latitude": {"constant": "40.5"}, "longitude": {"constant": "-87.5"}, "owner": "owner", "contact": "contact",
			 "visitNotes": "visits", "statedPoints": "points"}, "locationAccuracyMetres": 20000}""";

	private final ImportClient imports;

	private final TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	OlderRecordIT(@Autowired MockMvc mvc, @Autowired TestPeople people) {
		this.imports = new ImportClient(mvc, people);
		this.people = people;
	}

	@Test
	void showsPrivateWordsToCoordinatorsOnlyUntilTheyAreErased() throws Exception {
		TestPerson coordinator = this.imports.county("wordston", "IOA", "");
		this.imports.run("wordston", coordinator,
				file("W1,100,A. Nobody,nobody@example.org,Dog loose,190\nW2,90,,,,180\n"), MAPPING);
		this.imports.ask("/api/v1/trees/W1/older-record", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.owner").value("A. Nobody"))
			.andExpect(jsonPath("$.contact").value("nobody@example.org"))
			.andExpect(jsonPath("$.visitNotes").value("Dog loose"))
			.andExpect(jsonPath("$.row").value(2));
		this.imports.ask("/api/v1/trees/W2/older-record", coordinator)
			.andExpect(jsonPath("$.owner").value(nullValue()))
			.andExpect(jsonPath("$.row").value(3));
		this.imports.ask("/api/v1/trees/W1/older-record", this.people.verifier("wordston"))
			.andExpect(status().isForbidden());
		this.imports.ask("/api/v1/trees/W1/older-record", this.people.coordinator("elsewhereton"))
			.andExpect(status().isNotFound());
		assertThat(this.imports.read("/api/v1/trees/W1", coordinator)).doesNotContain("Nobody", "nobody", "Dog");
		this.jdbc.sql("delete from text_body where id = (select owner from older_record where county = 'wordston')")
			.update();
		this.imports.ask("/api/v1/trees/W1/older-record", coordinator)
			.andExpect(jsonPath("$.owner").value(nullValue()))
			.andExpect(jsonPath("$.contact").value("nobody@example.org"));
	}

	@Test
	void showsThePopularNameToEverybodyAndTheFinderToCoordinators() throws Exception {
		TestPerson coordinator = this.imports.county("popularton", "IOC", "");
		this.imports.run("popularton", coordinator, file("PN1,100,The Long Oak,B. Nobody,,\n"),
				MAPPING.replace("\"owner\": \"owner\", \"contact\": \"contact\"",
						"\"popularName\": \"owner\", \"finder\": \"contact\""));
		this.imports.ask("/api/v1/trees/PN1", this.people.volunteer("elsewhereton"))
			.andExpect(jsonPath("$.popularName").value("The Long Oak"));
		assertThat(this.imports.read("/api/v1/trees/PN1", coordinator)).doesNotContain("Nobody");
		this.imports.ask("/api/v1/trees/PN1/older-record", coordinator)
			.andExpect(jsonPath("$.finder").value("B. Nobody"))
			.andExpect(jsonPath("$.owner").value(nullValue()));
	}

	/** Rejected and waiting rows hold private words too, as they came. */
	@Test
	void erasesTheCellsOfRowsThatWereNotTaken() throws Exception {
		TestPerson coordinator = this.imports.county("erasington", "IOD", "");
		DocumentContext job = this.imports.run("erasington", coordinator, file("""
				Quercus alba,100,A. Nobody,nobody@example.org,Dog loose,
				Old man oak,90,C. Nobody,,,
				Quercus alba,much,D. Nobody,,,
				"""), MAPPING.replace("{\"constant\": \"Quercus alba\"}", "\"no\"").replace("\"tag\": \"no\",", ""));
		String path = "/api/v1/imports/" + job.<String>read("$.id");
		assertThat(this.imports.read(path + "/rejected.csv", coordinator)).contains("D. Nobody");
		this.imports.erase(path + "/untaken-rows", this.people.coordinator("elsewhereton"))
			.andExpect(status().isNotFound());
		this.imports.erase(path + "/untaken-rows", coordinator).andExpect(status().isNoContent());
		this.imports.ask(path, coordinator)
			.andExpect(jsonPath("$.accepted").value(1))
			.andExpect(jsonPath("$.waiting").value(0))
			.andExpect(jsonPath("$.rejected").value(2));
		assertThat(this.imports.read(path + "/rejected.csv", coordinator)).isEqualToNormalizingNewlines("""
				rejected row,rejected because,no,girth,owner,contact,visits,points
				3,the row was erased while it waited for the meaning of its name
				4,"girth: must be a length, such as 12.5, 3.75 m or 12 ft 4 in, but was much"
				""");
		assertThat(this.jdbc.sql("""
				select count(*) from (select cells::text as words, job from import_waiting
				  union all select cells::text, job from import_rejected_cells) kept where job = ?::uuid""")
			.param(job.<String>read("$.id"))
			.query(Long.class)
			.single()).isZero();
	}

	/** 100 in + 80 ft + 40 ft / 4 = 190 (common practice, no source). */
	@Test
	void notesStatedPointsThatDifferByMoreThanTheirRounding() throws Exception {
		TestPerson coordinator = this.imports.county("pointston", "IOB", "");
		DocumentContext job = this.imports.run("pointston", coordinator, file("""
				P1,100,,,,190
				P2,100,,,,"189,5"
				P3,100,,,,190.51
				P4,100,,,,about 200
				P5,100,,,,
				"""), MAPPING);
		assertThat(job.<Integer>read("$.accepted")).isEqualTo(5);
		assertThat(job.<Integer>read("$.notes")).isEqualTo(2);
		List<Map<String, Object>> notes = JsonPath
			.parse(this.imports.read("/api/v1/imports/" + job.<String>read("$.id") + "/notes", coordinator))
			.read("$.items");
		assertThat(notes).extracting((note) -> note.get("row") + " " + note.get("note"))
			.containsExactly("4 points: 190.51 points are stated, but the figures come to 190.00",
					"5 points: must be a number of points but was about 200; the figures come to 190.00");
	}

	private static byte[] file(String rows) {
		return ("no,girth,owner,contact,visits,points\r\n" + rows.replace("\n", "\r\n"))
			.getBytes(StandardCharsets.UTF_8);
	}

}
