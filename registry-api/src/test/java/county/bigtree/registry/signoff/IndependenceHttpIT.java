package county.bigtree.registry.signoff;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.ResultActions;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Nobody judges what they measured, however it was filed, and what verifiers declare of
 * their independence is kept (common practice, no source).
 */
@RegistryTest
class IndependenceHttpIT {

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void refusesWhoMeasuredThoughAnotherFiledIt() throws Exception {
		this.trees.county("measurerton", "IPA");
		TestPerson measurer = this.people.verifier("measurerton");
		TestTrees.Filed filed = measuredBy("measurerton", measurer);
		this.trees.signOff(filed.measurement(), measurer, CONFIRMED)
			.andExpect(status().isForbidden())
			.andExpect(jsonPath("$.detail").value("You can't sign off on a measurement that you took."));
		this.trees.signOff(filed.measurement(), this.people.verifier("measurerton"), CONFIRMED)
			.andExpect(status().isCreated());
	}

	@Test
	void refusesTheYesToATitleOfACoordinatorWhoMeasured() throws Exception {
		this.trees.county("yesserton", "IPB", """
				{"effectiveOn": "1800-01-01", "oldestFilingMonths": 1200, "titleNeedsCoordinator": true}""");
		TestPerson measurer = this.people.coordinator("yesserton");
		TestTrees.Filed filed = measuredBy("yesserton", measurer);
		String signOff = id(this.trees.signOff(filed.measurement(), this.people.verifier("yesserton"), CONFIRMED));
		this.trees.decide("/api/v1/sign-offs/" + signOff, "/assent", "{}", measurer).andExpect(status().isForbidden());
		this.trees.decide("/api/v1/sign-offs/" + signOff, "/assent", "{}", this.people.coordinator("yesserton"))
			.andExpect(status().isOk());
	}

	@Test
	void keepsWhatAVerifierDeclares() throws Exception {
		this.trees.county("declareton", "IPC");
		TestTrees.Filed filed = this.trees.nominate("declareton", this.people.volunteer("declareton"), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		TestPerson verifier = this.people.verifier("declareton");
		String signOff = id(this.trees.signOff(filed.measurement(), verifier,
				"""
						{"verdict": "confirmed", "declares": ["I know the owner.", "I was not there when it was measured."]}"""));
		this.trees.ask(get("/api/v1/sign-offs/" + signOff), verifier)
			.andExpect(jsonPath("$.declares.length()").value(2))
			.andExpect(jsonPath("$.declares[0]").value("I know the owner."));
	}

	private TestTrees.Filed measuredBy(String county, TestPerson measurer) throws Exception {
		return this.trees.nominate(county, this.people.volunteer(county), "quercus-alba",
				"{\"measuredOn\": \"2026-05-02\", \"measuredBy\": [\"A. Finder\", {\"person\": \"%s\"}], %s, %s}"
					.formatted(measurer.id(), TestTrees.readings(100), TestTrees.CONFIRMED));
	}

	private static String id(ResultActions answer) throws Exception {
		return JsonPath.read(answer.andExpect(status().isCreated()).andReturn().getResponse().getContentAsString(),
				"$.id");
	}

}
