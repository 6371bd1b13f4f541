package county.bigtree.registry.measurement;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.ResultActions;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What a measurement is said to be follows from what was decided about it, and not from
 * whether it is or was its tree's score.
 */
@RegistryTest
class MeasurementStatusHttpIT {

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void givesWayToOneOfTheSameDayFiledLater() throws Exception {
		this.trees.county("statusday", "MSA");
		TestTrees.Filed filed = this.trees.standing("statusday", 100, "2024-05-02");
		String later = confirmed("statusday", filed, 110, "2024-05-02");
		expect(filed.filer(), filed.measurement(), "superseded");
		expect(this.people.coordinator("statusday"), later, "counting");
	}

	@Test
	void givesWayThoughItIsFiledAfterALaterOne() throws Exception {
		this.trees.county("statusold", "MSB");
		TestTrees.Filed filed = this.trees.standing("statusold", 100, "2024-05-02");
		String older = confirmed("statusold", filed, 90, "2019-05-02");
		expect(this.people.coordinator("statusold"), older, "superseded");
		expect(filed.filer(), filed.measurement(), "counting");
	}

	@Test
	void countsThoughItsTreeIsNotOnTheBooks() throws Exception {
		this.trees.county("statusoff", "MSC");
		TestTrees.Filed filed = this.trees.standing("statusoff", 100, "2020-05-02");
		String later = confirmed("statusoff", filed, 110, "2024-05-02");
		TestPerson coordinator = this.people.coordinator("statusoff");
		this.trees
			.decide("/api/v1/trees/" + filed.tree(), "/eligibility",
					"{\"eligible\": false, \"reason\": \"planted in a pot\"}", coordinator)
			.andExpect(status().isOk());
		expect(coordinator, filed.measurement(), "superseded");
		expect(coordinator, later, "counting");
		this.trees
			.decide("/api/v1/measurements/" + later, "/setting-aside", "{\"reason\": \"another tree\"}", coordinator)
			.andExpect(status().isOk());
		expect(coordinator, filed.measurement(), "counting");
		expect(coordinator, later, "set-aside");
	}

	@Test
	void countsOfATreeThatFell() throws Exception {
		this.trees.county("statusfell", "MSD");
		TestTrees.Filed filed = this.trees.standing("statusfell", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("statusfell");
		String report = id(this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/condition-reports").content("""
				{"condition": "fallen", "observedOn": "2024-05-02"}"""), this.people.volunteer("statusfell")));
		this.trees.decide("/api/v1/condition-reports/" + report, "/decision", "{\"accept\": true}", coordinator)
			.andExpect(status().isOk());
		this.trees.oaks("statusfell").andExpect(jsonPath("$.items.length()").value(0));
		expect(coordinator, filed.measurement(), "counting");
	}

	@Test
	void countsNoMoreOnceItsSignOffIsRevoked() throws Exception {
		this.trees.county("statusback", "MSE");
		TestTrees.Filed filed = this.trees.standing("statusback", 100, "2020-05-02");
		String later = remeasured(filed, 110, "2024-05-02", this.people.volunteer("statusback"));
		String signOff = id(this.trees.signOff(later, this.people.verifier("statusback"), CONFIRMED));
		expect(filed.filer(), filed.measurement(), "superseded");
		TestPerson coordinator = this.people.coordinator("statusback");
		this.trees.decide("/api/v1/sign-offs/" + signOff, "/revocation", "{\"reason\": \"a mistake\"}", coordinator)
			.andExpect(status().isOk());
		expect(coordinator, later, "filed");
		expect(coordinator, filed.measurement(), "counting");
	}

	private void expect(TestPerson asker, String measurement, String expected) throws Exception {
		this.trees.ask(get("/api/v1/measurements/" + measurement), asker)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value(expected));
	}

	private String confirmed(String county, TestTrees.Filed of, int girth, String day) throws Exception {
		String measurement = remeasured(of, girth, day, this.people.volunteer(county));
		id(this.trees.signOff(measurement, this.people.verifier(county), CONFIRMED));
		return measurement;
	}

	private String remeasured(TestTrees.Filed of, int girth, String day, TestPerson person) throws Exception {
		return id(this.trees.ask(
				post("/api/v1/trees/" + of.tree() + "/measurements").content(TestTrees.measurement(girth, day)),
				person));
	}

	private static String id(ResultActions answer) throws Exception {
		return JsonPath.read(answer.andExpect(status().isCreated()).andReturn().getResponse().getContentAsString(),
				"$.id");
	}

}
