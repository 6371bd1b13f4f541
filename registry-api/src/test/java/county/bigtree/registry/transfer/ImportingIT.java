package county.bigtree.registry.transfer;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

import com.jayway.jsonpath.DocumentContext;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;

/**
 * The file and the mapping that the guide to imports shows.
 */
@RegistryTest
class ImportingIT {

	private final ImportClient imports;

	ImportingIT(@Autowired MockMvc mvc, @Autowired TestPeople people) {
		this.imports = new ImportClient(mvc, people);
	}

	/**
	 * Points of row 1: 158 in + 90 ft + 94 ft / 4 = 271.5 (common practice, no source);
	 * 272 are stated.
	 */
	@Test
	void takesInWhatTheGuideShows() throws Exception {
		String guide = Files.readString(Path.of("docs/importing.md"));
		TestPerson coordinator = this.imports.county("guideton", "IGA", "");
		DocumentContext job = this.imports.run("guideton", coordinator,
				block(guide, "csv").getBytes(StandardCharsets.UTF_8), block(guide, "json"));
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("accepted", 2)
			.containsEntry("kept", 3)
			.containsEntry("changed", 0)
			.containsEntry("waiting", 1)
			.containsEntry("rejected", 0);
		assertThat(
				JsonPath.parse(this.imports.read("/api/v1/imports/" + job.<String>read("$.id") + "/notes", coordinator))
					.<List<String>>read("$.items[*].note"))
			.hasSize(3)
			.anyMatch((note) -> note.startsWith("Points: 262 points are stated"))
			.anyMatch((note) -> note.equals("Spread: is missing"))
			.anyMatch((note) -> note.startsWith("Seen: must be a day"));
		this.imports.ask("/api/v1/counties/guideton/species/quercus-alba/standing", coordinator)
			.andExpect(jsonPath("$.items[*].points", contains(271.5)));
	}

	private static String block(String guide, String language) {
		int start = guide.indexOf("```" + language + "\n") + language.length() + 4;
		return guide.substring(start, guide.indexOf("```", start));
	}

}
