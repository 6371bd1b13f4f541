package county.bigtree.registry.condition;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What becomes of a volunteer's word that a tree fell.
 */
@RegistryTest
class ConditionHttpIT {

	private static final String ACCEPT = "{\"accept\": true, \"began\": \"2026-05-30\", \"reason\": \"seen from the road\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void waitsForACoordinatorWhoAccepts() throws Exception {
		this.trees.county("waitland", "CNA");
		TestTrees.Filed filed = this.trees.standing("waitland", 100, "2026-05-02");
		String report = report("waitland", filed);
		this.trees.oaks("waitland").andExpect(jsonPath("$.items.length()").value(1));
		TestPerson coordinator = this.people.coordinator("waitland");
		this.trees.decide(report, "/decision", ACCEPT, coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("accepted"));
		this.trees.oaks("waitland").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.oakTitles("waitland").andExpect(jsonPath("$.items[0].ended").value("fell"));
		this.trees.ask(get("/api/v1/counties/waitland/species/quercus-alba/standing?asOf=2026-05-29"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(1));
		this.trees.decide(report, "/decision", ACCEPT, coordinator).andExpect(status().isConflict());
	}

	@Test
	void mayHaveBegunBetweenTwoDaysAndThenHoldsFromTheLater() throws Exception {
		this.trees.county("betweenland", "CNG");
		TestTrees.Filed filed = this.trees.standing("betweenland", 100, "2026-05-02");
		String report = report("betweenland", filed);
		TestPerson coordinator = this.people.coordinator("betweenland");
		String between = "{\"accept\": true, \"between\": {\"earliest\": \"%s\", \"latest\": \"%s\"}, \"reason\": \"the storms\"}";
		this.trees.decide(report, "/decision", between.formatted("2026-05-28", "2026-05-20"), coordinator)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/between/latest"));
		this.trees.decide(report, "/decision", between.formatted("2026-05-20", "2026-05-28"), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.between.earliest").value("2026-05-20"))
			.andExpect(jsonPath("$.between.latest").value("2026-05-28"));
		this.trees.ask(get("/api/v1/counties/betweenland/species/quercus-alba/standing?asOf=2026-05-27"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(1));
		this.trees.ask(get("/api/v1/counties/betweenland/species/quercus-alba/standing?asOf=2026-05-28"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void changesNothingWhenDeclined() throws Exception {
		this.trees.county("dismissland", "CNB");
		TestTrees.Filed filed = this.trees.standing("dismissland", 100, "2026-05-02");
		String report = report("dismissland", filed);
		this.trees
			.decide(report, "/decision", "{\"accept\": false, \"reason\": \"another tree\"}",
					this.people.coordinator("dismissland"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("declined"));
		this.trees.oaks("dismissland").andExpect(jsonPath("$.items[0].title").value("champion"));
	}

	@Test
	void isNotForVerifiersNorForCoordinatorsOfElsewhereToDecide() throws Exception {
		this.trees.county("decideland", "CND");
		this.trees.county("elseland", "CNE");
		String report = report("decideland", this.trees.standing("decideland", 100, "2026-05-02"));
		this.trees
			.ask(post(report + "/decision").content(ACCEPT).header("If-Match", "\"1-x\""),
					this.people.verifier("decideland"))
			.andExpect(status().isForbidden());
		this.trees
			.ask(post(report + "/decision").content(ACCEPT).header("If-Match", "\"1-x\""),
					this.people.coordinator("elseland"))
			.andExpect(status().isForbidden());
	}

	@Test
	void refusesDaysToComeAndConditionsThatAreNone() throws Exception {
		this.trees.county("dayland", "CNF");
		String path = "/api/v1/trees/" + this.trees.standing("dayland", 100, "2026-05-02").tree()
				+ "/condition-reports";
		TestPerson volunteer = this.people.volunteer("dayland");
		this.trees.ask(post(path).content("{\"condition\": \"fallen\", \"observedOn\": \"2999-01-01\"}"), volunteer)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/observedOn"));
		this.trees.ask(post(path).content("{\"condition\": \"toppled\", \"observedOn\": \"2026-06-01\"}"), volunteer)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/condition"));
	}

	private String report(String county, TestTrees.Filed filed) throws Exception {
		String answer = this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/condition-reports").content("""
					{"condition": "fallen", "observedOn": "2026-06-01", "remarks": "across the path"}"""),
					this.people.volunteer(county))
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.status").value("waiting"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		return "/api/v1/condition-reports/" + JsonPath.<String>read(answer, "$.id");
	}

}
