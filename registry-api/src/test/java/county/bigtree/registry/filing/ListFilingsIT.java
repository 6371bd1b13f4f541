package county.bigtree.registry.filing;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * One's own filings of every kind, newest first, in pages, and nobody else's.
 */
@RegistryTest
class ListFilingsIT {

	private static final String COUNTY = "ownshire";

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Test
	void tellsOfEachAsItStandsNow() throws Exception {
		this.trees.county(COUNTY, "OWS");
		TestPerson person = this.people.volunteer(COUNTY);
		TestTrees.Filed standing = this.trees.standing(COUNTY, 100, "2024-05-02");
		TestTrees.Filed filed = this.trees.nominate(COUNTY, person, "quercus-alba",
				TestTrees.measurement(120, "2024-05-02"));
		this.trees
			.ask(post("/api/v1/trees/" + standing.tree() + "/measurements")
				.content(TestTrees.measurement(101, "2025-05-02")), person)
			.andExpect(status().isCreated());
		this.trees
			.ask(post("/api/v1/trees/" + standing.tree() + "/condition-reports")
				.content("{\"condition\": \"declining\", \"observedOn\": \"2025-06-01\"}"), person)
			.andExpect(status().isCreated());
		this.trees.signOff(filed.measurement(), this.people.verifier(COUNTY), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		String first = list(person, "?limit=2");
		assertThat((java.util.List<?>) JsonPath.read(first, "$.items[*].kind")).asString()
			.isEqualTo("[\"report\",\"remeasurement\"]");
		assertThat((java.util.List<?>) JsonPath.read(first, "$.items[*].status")).asString()
			.isEqualTo("[\"waiting\",\"filed\"]");
		assertThat((double) JsonPath.read(first, "$.items[1].points")).isEqualTo(191.0);
		String second = list(person, "?limit=2&cursor=" + JsonPath.read(first, "$.next"));
		assertThat((java.util.List<?>) JsonPath.read(second, "$.items[*].id")).asString()
			.isEqualTo("[\"" + filed.nomination() + "\"]");
		assertThat((String) JsonPath.read(second, "$.items[0].status")).isEqualTo("accepted");
		assertThat(list(this.people.volunteer(COUNTY), "")).contains("\"items\":[]");
	}

	private String list(TestPerson person, String query) throws Exception {
		return this.trees.ask(get(java.net.URI.create("/api/v1/people/me/filings" + query)), person)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

}
