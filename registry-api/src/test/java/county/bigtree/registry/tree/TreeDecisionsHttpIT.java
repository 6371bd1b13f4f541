package county.bigtree.registry.tree;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.test.web.servlet.ResultActions;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Merges, splits, eligibility and stem rulings over HTTP.
 */
@RegistryTest
class TreeDecisionsHttpIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void mergeKeepsOneTreeWithWhatIsKnownOfBothUntilItIsTakenBack() throws Exception {
		this.trees.county("mergeland", "TDA");
		TestTrees.Filed kept = this.trees.standing("mergeland", 100, "2020-05-02");
		TestTrees.Filed double1 = this.trees.standing("mergeland", 120, "2024-05-02");
		TestPerson coordinator = this.people.coordinator("mergeland");
		decide(double1, "/merge", "{\"into\": \"%s\", \"reason\": \"the same tree\"}".formatted(kept.tree()),
				coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.kept").value(kept.tree()));
		this.trees.oaks("mergeland")
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].tree").value(kept.tree()))
			.andExpect(jsonPath("$.items[0].points").value(210.0));
		this.trees.oakTitles("mergeland")
			.andExpect(jsonPath("$.items[0].began").value("merged"))
			.andExpect(jsonPath("$.items[1].ended").value("merged"));
		ResultActions led = this.trees.ask(get("/api/v1/trees/" + double1.tree()), coordinator)
			.andExpect(status().isTemporaryRedirect())
			.andExpect(redirectedUrl("/api/v1/trees/" + kept.tree()));
		this.trees.ask(get("/api/v1/trees/" + kept.tree() + "/measurements"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(2));
		this.trees
			.ask(post("/api/v1/trees/" + double1.tree() + "/measurements")
				.content(TestTrees.measurement(130, "2026-05-02")), this.people.volunteer("mergeland"))
			.andExpect(status().isConflict())
			.andExpect(jsonPath("$.kept").value(kept.tree()));
		String tag = String.valueOf(led.andReturn().getResponse().getHeader(HttpHeaders.ETAG));
		this.trees
			.ask(post("/api/v1/trees/" + double1.tree() + "/merge/revocation").header(HttpHeaders.IF_MATCH, tag)
				.content("{\"reason\": \"two trees after all\"}"), coordinator)
			.andExpect(status().isOk());
		this.trees.oaks("mergeland")
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].tree").value(double1.tree()));
	}

	@Test
	void mergeIsRefusedIntoItselfIntoNothingAndByStrangers() throws Exception {
		this.trees.county("mergeedge", "TDB");
		this.trees.county("mergeother", "TDC");
		TestTrees.Filed one = this.trees.standing("mergeedge", 100, "2020-05-02");
		TestTrees.Filed elsewhere = this.trees.standing("mergeother", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("mergeedge");
		String body = "{\"into\": \"%s\", \"reason\": \"the same tree\"}";
		decide(one, "/merge", body.formatted(one.tree()), coordinator).andExpect(status().isUnprocessableContent());
		decide(one, "/merge", body.formatted("TDB-9999"), coordinator).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/into"));
		decide(one, "/merge", body.formatted(elsewhere.tree()), coordinator).andExpect(status().isForbidden());
		decide(one, "/merge", body.formatted(elsewhere.tree()), this.people
			.with(CountyRole.of("mergeedge", Role.COORDINATOR), CountyRole.of("mergeother", Role.COORDINATOR)))
			.andExpect(status().isOk());
		this.trees.oaks("mergeedge").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.oaks("mergeother").andExpect(jsonPath("$.items.length()").value(1));
	}

	@Test
	void splitGivesMeasurementsToATreeOfTheirOwn() throws Exception {
		this.trees.county("splitland", "TDD");
		TestTrees.Filed filed = this.trees.standing("splitland", 100, "2020-05-02");
		TestPerson volunteer = this.people.volunteer("splitland");
		String other = JsonPath.read(this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
				.content(TestTrees.measurement(150, "2024-05-02")), volunteer)
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
		this.trees.signOff(other, this.people.verifier("splitland"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		String answer = decide(filed, "/split",
				"""
						{"measurements": ["%s"], "location": {"latitude": 40.2, "longitude": -86.3}, "reason": "the neighbour"}"""
					.formatted(other),
				this.people.coordinator("splitland"))
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		String newTree = JsonPath.read(answer, "$.id");
		this.trees.oaks("splitland")
			.andExpect(jsonPath("$.items[0].tree").value(newTree))
			.andExpect(jsonPath("$.items[0].points").value(240.0))
			.andExpect(jsonPath("$.items[1].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[1].points").value(190.0));
		this.trees.oakTitles("splitland")
			.andExpect(jsonPath("$.items[0].began").value("split"))
			.andExpect(jsonPath("$.items[1].ended").value("split"));
		this.trees.ask(get("/api/v1/trees/" + newTree + "/measurements"), volunteer)
			.andExpect(jsonPath("$.items[0].id").value(other))
			.andExpect(jsonPath("$.items.length()").value(1));
	}

	@Test
	void anIneligibleTreeIsNotRankedUntilItIsJudgedOtherwise() throws Exception {
		this.trees.county("judgeland", "TDE");
		TestTrees.Filed filed = this.trees.standing("judgeland", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("judgeland");
		decide(filed, "/eligibility", "{\"eligible\": false, \"reason\": \"planted in a pot\"}", coordinator)
			.andExpect(status().isOk());
		this.trees.oaks("judgeland").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.oakTitles("judgeland").andExpect(jsonPath("$.items[0].ended").value("ineligible"));
		this.trees.ask(get("/api/v1/trees/" + filed.tree()), coordinator)
			.andExpect(jsonPath("$.eligible").value(false));
		decide(filed, "/eligibility", "{\"eligible\": true, \"reason\": \"it has roots\"}", coordinator)
			.andExpect(status().isOk());
		this.trees.oakTitles("judgeland").andExpect(jsonPath("$.items[0].began").value("eligible"));
	}

	@Test
	void aStemRulingLetsOnlyWhatItKeepsCount() throws Exception {
		this.trees.county("stemland", "TDF");
		TestTrees.Filed filed = this.trees.standing("stemland", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("stemland");
		decide(filed, "/stem-rulings", """
				{"form": "several", "scoredStem": "the northern one", "keeps": [], "reason": "taped around both"}""",
				coordinator)
			.andExpect(status().isOk());
		this.trees.oaks("stemland").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.oakTitles("stemland").andExpect(jsonPath("$.items[0].ended").value("ruled"));
		decide(filed, "/stem-rulings", """
				{"form": "single", "keeps": ["%s"], "reason": "looked again"}""".formatted(filed.measurement()),
				coordinator)
			.andExpect(status().isOk());
		this.trees.oaks("stemland").andExpect(jsonPath("$.items[0].points").value(190.0));
		decide(filed, "/stem-rulings", """
				{"form": "single", "keeps": ["00000000-0000-7000-8000-000000000009"], "reason": "looked again"}""",
				coordinator)
			.andExpect(status().isUnprocessableContent());
	}

	@Test
	void decisionsAreForTheCountysCoordinators() throws Exception {
		this.trees.county("decisionland", "TDG");
		TestTrees.Filed filed = this.trees.standing("decisionland", 100, "2020-05-02");
		String body = "{\"eligible\": false, \"reason\": \"mine is bigger\"}";
		decide(filed, "/eligibility", body, this.people.verifier("decisionland")).andExpect(status().isForbidden());
		this.trees.county("decisionfar", "TDH");
		decide(filed, "/eligibility", body, this.people.coordinator("decisionfar")).andExpect(status().isForbidden());
		this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/eligibility").header(HttpHeaders.IF_MATCH, "\"999-x\"")
				.content(body), this.people.coordinator("decisionland"))
			.andExpect(status().isPreconditionFailed());
	}

	@Test
	void thePlaceIsShownAsFarAsTheCoordinatorSays() throws Exception {
		this.trees.county("showland", "TDJ");
		TestTrees.Filed filed = this.trees.standing("showland", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("showland");
		decide(filed, "/visibility", "{\"visibility\": \"exact\", \"reason\": \"the owner agrees\"}", coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get("/api/v1/trees/" + filed.tree()), coordinator)
			.andExpect(jsonPath("$.position.latitude").value(40.1));
		decide(filed, "/visibility", "{\"visibility\": \"county\", \"reason\": \"visitors trample it\"}", coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get("/api/v1/trees/" + filed.tree()), coordinator)
			.andExpect(jsonPath("$.position").doesNotExist());
		decide(filed, "/visibility", "{\"visibility\": \"all\", \"reason\": \"why not\"}", coordinator)
			.andExpect(status().isUnprocessableContent());
		this.trees.oaks("showland").andExpect(jsonPath("$.items[0].title").value("champion"));
	}

	@Test
	void aDryRunTellsWhatWouldChangeAndChangesNothing() throws Exception {
		this.trees.county("dryland", "TDI");
		TestTrees.Filed leader = this.trees.standing("dryland", 120, "2020-05-02");
		TestTrees.Filed second = this.trees.standing("dryland", 100, "2021-05-02");
		TestPerson coordinator = this.people.coordinator("dryland");
		decide(leader, "/eligibility?dryRun=true", "{\"eligible\": false, \"reason\": \"what if\"}", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.dryRun").value(true))
			.andExpect(jsonPath("$.changes[0].kind").value("eligibility-judged"))
			.andExpect(jsonPath("$.changes[0].titles.ended[0].tree").value(leader.tree()))
			.andExpect(jsonPath("$.changes[0].titles.ended[0].why").value("ineligible"))
			.andExpect(jsonPath("$.changes[0].titles.began[0].tree").value(second.tree()))
			.andExpect(jsonPath("$.changes[0].scores.withdrawn[0].points").value(210.0))
			.andExpect(jsonPath("$.pastSince").value("2020-05-02"));
		this.trees.oaks("dryland").andExpect(jsonPath("$.items[0].tree").value(leader.tree()));
		this.trees.oakTitles("dryland").andExpect(jsonPath("$.items.length()").value(1));
		TestTrees.Filed third = this.trees.nominate("dryland", this.people.volunteer("dryland"), "quercus-alba",
				TestTrees.measurement(140, "2026-05-02"));
		this.trees
			.ask(post("/api/v1/measurements/" + third.measurement() + "/sign-offs?dryRun=true")
				.content("{\"verdict\": \"confirmed\"}"), this.people.verifier("dryland"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.changes[0].titles.began[0].tree").value(third.tree()))
			.andExpect(jsonPath("$.changes[0].titles.ended[0].why").value("overtaken"));
		this.trees.oaks("dryland").andExpect(jsonPath("$.items[0].tree").value(leader.tree()));
		decide(leader, "/eligibility?dryRun=maybe", "{\"eligible\": false, \"reason\": \"what if\"}", coordinator)
			.andExpect(status().isBadRequest());
		decide(leader, "/merge?dryRun=true", "{\"into\": \"nothing\", \"reason\": \"what if\"}", coordinator)
			.andExpect(status().isUnprocessableContent());
	}

	private ResultActions decide(TestTrees.Filed filed, String action, String body, TestPerson person)
			throws Exception {
		return this.trees.decide("/api/v1/trees/" + filed.tree(), action, body, person);
	}

}
