package county.bigtree.registry.county;

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
 * What is left of a county for practice that is emptied.
 */
@RegistryTest
class EmptyingHttpIT {

	private static final String REASON = "{\"reason\": \"the course is over\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void takesAllTreesOffAtOnce() throws Exception {
		this.trees.practiceCounty("practiceland", "VEA");
		TestTrees.Filed champion = this.trees.standing("practiceland", 200, "2026-05-02");
		this.trees.standing("practiceland", 100, "2026-05-02");
		this.trees.nominate("practiceland", this.people.volunteer("practiceland"), "acer-rubrum",
				TestTrees.measurement(90, "2026-05-02"));
		TestPerson coordinator = this.people.coordinator("practiceland");
		String visit = this.trees
			.ask(post("/api/v1/visits")
				.content("{\"tree\": \"%s\", \"purpose\": \"doubt\"}".formatted(champion.tree())), coordinator)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		empty("practiceland", coordinator).andExpect(status().isOk()).andExpect(jsonPath("$.trees").value(3));
		this.trees.oaks("practiceland").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.oakTitles("practiceland")
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].tree").value(champion.tree()))
			.andExpect(jsonPath("$.items[0].ended").value("taken-off"));
		this.trees.ask(get("/api/v1/counties/practiceland/queue"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(get("/api/v1/visits?county=practiceland&open=true"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(get("/api/v1/visits/" + JsonPath.read(visit, "$.id")), coordinator)
			.andExpect(jsonPath("$.open").value(false));
		this.trees
			.ask(post("/api/v1/visits")
				.content("{\"tree\": \"%s\", \"purpose\": \"doubt\"}".formatted(champion.tree())), coordinator)
			.andExpect(status().isConflict());
		this.trees
			.ask(post("/api/v1/trees/" + champion.tree() + "/measurements")
				.content(TestTrees.measurement(210, "2026-06-02")), coordinator)
			.andExpect(status().isConflict());
		this.trees
			.ask(post("/api/v1/trees/" + champion.tree() + "/condition-reports")
				.content("{\"condition\": \"fallen\", \"observedOn\": \"2026-06-02\"}"), coordinator)
			.andExpect(status().isConflict());
		this.trees.ask(get("/api/v1/counties/practiceland/journal"), coordinator)
			.andExpect(jsonPath("$.items[0].kind").value("emptied"))
			.andExpect(jsonPath("$.items[0].treeCount").value(3))
			.andExpect(jsonPath("$.items[0].reason").value("the course is over"));
		empty("practiceland", coordinator).andExpect(status().isOk()).andExpect(jsonPath("$.trees").value(0));
	}

	@Test
	void canBeFilledAgain() throws Exception {
		this.trees.practiceCounty("refillland", "VEB");
		this.trees.standing("refillland", 200, "2026-05-02");
		empty("refillland", this.people.coordinator("refillland")).andExpect(status().isOk());
		this.trees.standing("refillland", 100, "2026-05-02");
		this.trees.oaks("refillland")
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].tag").value("VEB-0002"))
			.andExpect(jsonPath("$.items[0].title").value("champion"));
	}

	@Test
	void isRehearsedWithoutEffect() throws Exception {
		this.trees.practiceCounty("rehearseland", "VEC");
		this.trees.standing("rehearseland", 200, "2026-05-02");
		this.trees
			.ask(post("/api/v1/counties/rehearseland/emptying?dryRun=true").content(REASON),
					this.people.coordinator("rehearseland"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.changes[0].titles.ended[0].why").value("taken-off"));
		this.trees.oaks("rehearseland").andExpect(jsonPath("$.items[0].title").value("champion"));
	}

	@Test
	void isForCoordinatorsOfCountiesForPracticeOnly() throws Exception {
		this.trees.county("earnestland", "VED");
		this.trees.practiceCounty("triland", "VEE");
		this.trees.standing("earnestland", 200, "2026-05-02");
		empty("earnestland", this.people.coordinator("earnestland")).andExpect(status().isConflict());
		this.trees.oaks("earnestland").andExpect(jsonPath("$.items.length()").value(1));
		empty("triland", this.people.verifier("triland")).andExpect(status().isForbidden());
		empty("triland", this.people.coordinator("earnestland")).andExpect(status().isForbidden());
		this.trees
			.ask(post("/api/v1/counties/triland/emptying").content("{\"reason\": \" \"}"),
					this.people.coordinator("triland"))
			.andExpect(status().isUnprocessableContent());
	}

	private ResultActions empty(String county, TestPerson person) throws Exception {
		return this.trees.ask(post("/api/v1/counties/" + county + "/emptying").content(REASON), person);
	}

}
