package county.bigtree.registry.measurement;

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
 * Trees measured again, and what makes their new figures count.
 */
@RegistryTest
class RemeasurementHttpIT {

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void passesARivalOnceSignedOffAndFallsBackWhenSetAside() throws Exception {
		this.trees.county("againland", "RMA");
		TestTrees.Filed smaller = this.trees.standing("againland", 100, "2020-05-02");
		TestTrees.Filed bigger = this.trees.standing("againland", 120, "2020-05-02");
		String again = remeasure(smaller, 140, this.people.volunteer("againland"));
		this.trees.oaks("againland").andExpect(jsonPath("$.items[0].tree").value(bigger.tree()));
		this.trees.signOff(again, this.people.verifier("againland"), CONFIRMED).andExpect(status().isCreated());
		this.trees.oaks("againland")
			.andExpect(jsonPath("$.items[0].tree").value(smaller.tree()))
			.andExpect(jsonPath("$.items[0].points").value(230.0));
		TestPerson coordinator = this.people.coordinator("againland");
		this.trees
			.decide("/api/v1/measurements/" + again, "/setting-aside", "{\"reason\": \"another tree\"}", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("set-aside"));
		this.trees.oaks("againland").andExpect(jsonPath("$.items[0].tree").value(bigger.tree()));
		this.trees.oakTitles("againland")
			.andExpect(jsonPath("$.items[0].began").value("rival-left"))
			.andExpect(jsonPath("$.items[1].ended").value("set-aside"))
			.andExpect(jsonPath("$.items[2].ended").value("overtaken"));
		this.trees.decide("/api/v1/measurements/" + again, "/setting-aside", "{\"reason\": \"again\"}", coordinator)
			.andExpect(status().isConflict());
	}

	@Test
	void needsAsManySignOffsAsTheRulesOfItsDayAsk() throws Exception {
		this.trees.county("twoland", "RMB", """
				{"effectiveOn": "1800-01-01", "requiredSignOffs": 2}""");
		TestTrees.Filed filed = this.trees.nominate("twoland", this.people.volunteer("twoland"), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		this.trees.signOff(filed.measurement(), this.people.verifier("twoland"), CONFIRMED)
			.andExpect(status().isCreated());
		this.trees.oaks("twoland").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.signOff(filed.measurement(), this.people.verifier("twoland"), CONFIRMED)
			.andExpect(status().isCreated());
		this.trees.oaks("twoland").andExpect(jsonPath("$.items[0].title").value("champion"));
	}

	@Test
	void isNotSignedOffByWhoMeasuredItThoughNamedOnly() throws Exception {
		this.trees.county("nameland", "RMC");
		TestPerson verifier = this.people.verifier("nameland");
		TestTrees.Filed filed = this.trees.nominate("nameland", this.people.volunteer("nameland"), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02", "A. Finder", " " + verifier.creditName().toUpperCase()));
		this.trees.signOff(filed.measurement(), verifier, CONFIRMED)
			.andExpect(status().isForbidden())
			.andExpect(jsonPath("$.type").value("/problems/not-allowed"));
	}

	@Test
	void showsItsArithmetic() throws Exception {
		this.trees.county("workland", "RMD");
		TestTrees.Filed filed = this.trees.standing("workland", 100, "2026-05-02");
		this.trees.ask(get("/api/v1/measurements/" + filed.measurement()), filed.filer())
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.working[?(@.formula == 'P = C + H + W / 4')].numbers").value("100 + 80 + 40 / 4"))
			.andExpect(jsonPath("$.working[?(@.formula == 'P = C + H + W / 4')].result").value("190 points"))
			.andExpect(jsonPath("$.cautions").isArray());
	}

	@Test
	void refusesADayToCome() throws Exception {
		this.trees.county("badland", "RME");
		TestTrees.Filed filed = this.trees.standing("badland", 100, "2026-05-02");
		this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/measurements").content("""
				{"measuredOn": "2999-01-01", "girth": {"method": "tape", "girth": {"value": 100, "unit": "in"}}}"""),
				this.people.volunteer("badland"))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[*].pointer").value("#/measuredOn"));
	}

	@Test
	void goesToAVerifierComesBackAndIsWithdrawn() throws Exception {
		this.trees.county("moveland", "RMF");
		TestTrees.Filed filed = this.trees.standing("moveland", 100, "2026-05-02");
		TestPerson volunteer = this.people.volunteer("moveland");
		TestPerson verifier = this.people.verifier("moveland");
		TestPerson coordinator = this.people.coordinator("moveland");
		String path = "/api/v1/measurements/" + remeasure(filed, 120, volunteer);
		String assign = "{\"move\": \"assign\", \"verifier\": \"%s\"}";
		this.trees.decide(path, "/moves", assign.formatted(volunteer.id()), coordinator)
			.andExpect(status().isUnprocessableContent());
		this.trees.decide(path, "/moves", assign.formatted(verifier.id()), verifier).andExpect(status().isForbidden());
		this.trees.decide(path, "/moves", assign.formatted(verifier.id()), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("assigned"));
		this.trees.decide(path, "/moves", assign.formatted(verifier.id()), coordinator)
			.andExpect(status().isConflict());
		this.trees.decide(path, "/moves", "{\"move\": \"hand-back\"}", verifier)
			.andExpect(status().isUnprocessableContent());
		this.trees.decide(path, "/moves", "{\"move\": \"hand-back\", \"reason\": \"snow\"}", verifier)
			.andExpect(jsonPath("$.status").value("filed"));
		this.trees.decide(path, "/moves", "{\"move\": \"withdraw\", \"reason\": \"wrong tree\"}", volunteer)
			.andExpect(jsonPath("$.status").value("withdrawn"));
		this.trees.signOff(path.substring("/api/v1/measurements/".length()), verifier, CONFIRMED)
			.andExpect(status().isConflict());
		this.trees.decide(path, "/moves", "{\"move\": \"reopen\"}", volunteer).andExpect(status().isOk());
		this.trees.signOff(path.substring("/api/v1/measurements/".length()), verifier, CONFIRMED)
			.andExpect(status().isCreated());
		this.trees
			.decide("/api/v1/measurements/" + filed.measurement(), "/moves", assign.formatted(verifier.id()),
					coordinator)
			.andExpect(status().isConflict());
	}

	private String remeasure(TestTrees.Filed filed, int girth, TestPerson person) throws Exception {
		String answer = this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
				.content(TestTrees.measurement(girth, "2026-06-02")), person)
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.status").value("filed"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		return JsonPath.read(answer, "$.id");
	}

}
