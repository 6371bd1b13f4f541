package county.bigtree.registry.species.web;

import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.Problems;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.json.JsonCompareMode;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Codes and symbols are those of the FIA list (REF_SPECIES, USDA Forest Service).
 */
@RegistryTest
class SpeciesHttpIT {

	@Autowired
	private MockMvc mvc;

	@Test
	void showsASpeciesWithItsNamesToAnyone() throws Exception {
		this.mvc.perform(get("/api/v1/species/platanus-x-acerifolia"))
			.andExpect(status().isOk())
			.andExpect(header().exists(HttpHeaders.ETAG))
			.andExpect(content().json("""
					{"key": "platanus-x-acerifolia", "scientificName": "Platanus × acerifolia",
					 "commonName": "London planetree", "genus": "Platanus", "epithet": "acerifolia", "hybrid": true,
					 "conifer": false, "rankable": true, "fiaCode": 8253, "plantsSymbol": "PLHY3",
					 "source": "FIA REF_SPECIES"}""", JsonCompareMode.LENIENT))
			.andExpect(jsonPath("$.names[0].name").value("Platanus × acerifolia"))
			.andExpect(jsonPath("$.names[?(@.kind == 'former')].name").value("Platanus hybrida"));
	}

	@Test
	void findsByMisspeltNameAndBySymbol() throws Exception {
		this.mvc.perform(get("/api/v1/species").param("query", "Quercs alba"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items[0].key").value("quercus-alba"));
		this.mvc.perform(get("/api/v1/species").param("query", "acsa3"))
			.andExpect(jsonPath("$.items[0].key").value("acer-saccharum"))
			.andExpect(jsonPath("$.next").isEmpty());
	}

	@Test
	void leadsFromPageToPage() throws Exception {
		String first = this.mvc.perform(get("/api/v1/species").param("query", "oak").param("limit", "3"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(3))
			.andExpect(header().string(HttpHeaders.LINK, containsString("rel=\"next\"")))
			.andReturn()
			.getResponse()
			.getContentAsString();
		String next = JsonPath.read(first, "$.next");
		String second = this.mvc
			.perform(get("/api/v1/species").param("query", "oak").param("limit", "3").param("cursor", next))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(JsonPath.<List<String>>read(second, "$.items[*].key")).hasSize(3)
			.doesNotContainAnyElementsOf(JsonPath.<List<String>>read(first, "$.items[*].key"));
	}

	@Test
	void answersAnUnknownKeyWithAProblem() throws Exception {
		this.mvc.perform(get("/api/v1/species/quercus-nulla"))
			.andExpect(status().isNotFound())
			.andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
			.andExpect(Problems.problem("""
					{"type": "/problems/not-found", "title": "Nothing here", "status": 404,
					 "detail": "No species has this key. Search for it by name.",
					 "instance": "/api/v1/species/quercus-nulla"}"""));
	}

	@Test
	void refusesAnEndlessQuery() throws Exception {
		this.mvc.perform(get("/api/v1/species").param("query", "o".repeat(201)))
			.andExpect(status().isBadRequest())
			.andExpect(jsonPath("$.type").value("/problems/invalid-parameter"))
			.andExpect(jsonPath("$.parameter").value("query"));
	}

}
