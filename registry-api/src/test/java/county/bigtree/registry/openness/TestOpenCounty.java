package county.bigtree.registry.openness;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;

import org.springframework.stereotype.Component;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Founds a county of four white oaks of which each is shown otherwise: the largest, its
 * champion, not at all, one by its place, one by the grid, and one by the county alone.
 */
@Component
class TestOpenCounty {

	/** No cell of the grid has its middle here. */
	static final double LATITUDE = 40.123457;

	/** Nor here. */
	static final double LONGITUDE = -86.234567;

	/** What a place that is not shown would begin with. */
	static final String EXACT_LATITUDE = "40.1234";

	private final TestTrees trees;

	private final TestPeople people;

	TestOpenCounty(TestTrees trees, TestPeople people) {
		this.trees = trees;
		this.people = people;
	}

	Planted found(String county, String prefix) throws Exception {
		this.trees.county(county, prefix);
		TestPerson coordinator = this.people.coordinator(county);
		One unlisted = plant(county, 140);
		One exact = plant(county, 130);
		One nearby = plant(county, 120);
		One countyOnly = plant(county, 110);
		show(exact, "exact", coordinator);
		show(countyOnly, "county", coordinator);
		unlist(unlisted, coordinator);
		return new Planted(county, coordinator, unlisted, exact, nearby, countyOnly);
	}

	private One plant(String county, int girthInches) throws Exception {
		String answer = this.trees
			.ask(post("/api/v1/counties/" + county + "/nominations").content("""
					{"species": "quercus-alba", "access": "public", "visibility": "nearby",
					 "location": {"latitude": %s, "longitude": %s, "accuracyMetres": 8}, "measurement": %s}"""
				.formatted(LATITUDE, LONGITUDE, TestTrees.measurement(girthInches, "2024-05-02", "Z. Measurer"))),
					this.people.volunteer(county))
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees
			.signOff(JsonPath.read(answer, "$.measurement.id"), this.people.verifier(county),
					"{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		return new One(JsonPath.read(answer, "$.tree"), JsonPath.read(answer, "$.tag"),
				JsonPath.read(answer, "$.measurement.id"));
	}

	void show(One tree, String visibility, TestPerson coordinator) throws Exception {
		this.trees
			.decide("/api/v1/trees/" + tree.id(), "/visibility",
					"{\"visibility\": \"%s\", \"reason\": \"a test\"}".formatted(visibility), coordinator)
			.andExpect(status().isOk());
	}

	/** An owner who has consented to nothing. */
	void unlist(One tree, TestPerson coordinator) throws Exception {
		this.trees
			.ask(post("/api/v1/trees/" + tree.id() + "/owners")
				.content("{\"name\": \"C. Landholder\", \"contact\": \"the mill\"}"), coordinator)
			.andExpect(status().isCreated());
	}

	String read(String address) throws Exception {
		return this.trees.ask(get(address), this.people.with())
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

	/**
	 * The county and its trees.
	 */
	record Planted(String county, TestPerson coordinator, One unlisted, One exact, One nearby, One countyOnly) {
	}

	/**
	 * A tree.
	 */
	record One(String id, String tag, String measurement) {
	}

}
