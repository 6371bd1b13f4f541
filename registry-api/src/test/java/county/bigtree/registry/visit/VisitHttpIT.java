package county.bigtree.registry.visit;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Who plans visits, who sees them, and what their outcomes do. No outside source: what
 * visits are for and what may come of them is common practice.
 */
@RegistryTest
class VisitHttpIT {

	private static final String SEEN = "{\"outcome\": \"seen\", \"visitedOn\": \"2026-06-10\", \"remarks\": \"in leaf\"}";

	private static final String NOT_FOUND = "{\"outcome\": \"not-found\", \"visitedOn\": \"2026-06-10\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void isPlannedByTheCoordinatorForAVerifierWhoFindsIt() throws Exception {
		this.trees.county("planland", "VPA");
		TestTrees.Filed filed = this.trees.standing("planland", 100, "2026-05-02");
		TestPerson verifier = this.people.verifier("planland");
		String visit = plan(this.people.coordinator("planland"), """
				{"tree": "%s", "purpose": "doubt", "verifier": "%s", "companion": "the ranger", "byWhen": "2999-06-30",
				 "arrangedAt": "2999-06-10T14:00:00Z", "notes": "dog at the gate"}""".formatted(filed.tree(),
				verifier.id()));
		this.trees.ask(get(visit), verifier)
			.andExpect(status().isOk())
			.andExpect(header().string(HttpHeaders.ETAG, startsWith("\"1-")))
			.andExpect(jsonPath("$.tree").value(filed.tree()))
			.andExpect(jsonPath("$.tag").value("VPA-0001"))
			.andExpect(jsonPath("$.county").value("planland"))
			.andExpect(jsonPath("$.purpose").value("doubt"))
			.andExpect(jsonPath("$.verifier").value(verifier.id().toString()))
			.andExpect(jsonPath("$.verifierName").value(verifier.creditName()))
			.andExpect(jsonPath("$.companion").value("the ranger"))
			.andExpect(jsonPath("$.byWhen").value("2999-06-30"))
			.andExpect(jsonPath("$.arrangedOn").value(nullValue()))
			.andExpect(jsonPath("$.arrangedAt").value("2999-06-10T14:00:00Z"))
			.andExpect(jsonPath("$.notes").value("dog at the gate"))
			.andExpect(jsonPath("$.open").value(true))
			.andExpect(jsonPath("$.outcome").value(nullValue()));
	}

	@Test
	void isListedForItsVerifierAndForTheCoordinatorAlone() throws Exception {
		this.trees.county("listland", "VPB");
		String tree = this.trees.standing("listland", 100, "2026-05-02").tree();
		TestPerson coordinator = this.people.coordinator("listland");
		TestPerson verifier = this.people.verifier("listland");
		TestPerson other = this.people.verifier("listland");
		String own = plan(verifier, body(tree, "remeasure"));
		String others = plan(other, body(tree, "condition"));
		String coordinators = plan(coordinator, body(tree, "sign-off"));
		expectListed(verifier, "", own);
		expectListed(verifier, "?county=listland", own);
		expectListed(verifier, "?county=elsewhere");
		expectListed(other, "", others);
		expectListed(coordinator, "?county=listland", own, others, coordinators);
		expectListed(coordinator, "?county=listland&mine=true", coordinators);
		this.trees.decide(own, "/outcome", SEEN, verifier).andExpect(status().isOk());
		expectListed(coordinator, "?county=listland&open=true", others, coordinators);
		expectListed(coordinator, "?county=listland&open=false", own);
		this.trees.ask(get(own), other).andExpect(status().isNotFound());
		this.trees.ask(get(own), this.people.coordinator("elsewhere")).andExpect(status().isNotFound());
		this.trees.ask(get("/api/v1/visits"), this.people.volunteer("listland")).andExpect(status().isForbidden());
	}

	@Test
	void listsInPages() throws Exception {
		this.trees.county("pageland", "VPC");
		String tree = this.trees.standing("pageland", 100, "2026-05-02").tree();
		TestPerson verifier = this.people.verifier("pageland");
		String first = plan(verifier, body(tree, "remeasure"));
		String second = plan(verifier, body(tree, "condition"));
		String page = this.trees.ask(get("/api/v1/visits?limit=1"), verifier)
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].id").value(id(first)))
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees.ask(get("/api/v1/visits?limit=1&cursor=" + JsonPath.read(page, "$.next")), verifier)
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].id").value(id(second)))
			.andExpect(jsonPath("$.next").value(nullValue()));
	}

	@Test
	void isNotForVerifiersToPlanForOthersNorForVolunteersToMake() throws Exception {
		this.trees.county("mayland", "VPD");
		String tree = this.trees.standing("mayland", 100, "2026-05-02").tree();
		TestPerson verifier = this.people.verifier("mayland");
		TestPerson volunteer = this.people.volunteer("mayland");
		String forOther = "{\"tree\": \"%s\", \"purpose\": \"doubt\", \"verifier\": \"%s\"}";
		this.trees
			.ask(post("/api/v1/visits").content(forOther.formatted(tree, verifier.id())),
					this.people.verifier("mayland"))
			.andExpect(status().isForbidden());
		this.trees.ask(post("/api/v1/visits").content(body(tree, "doubt")), this.people.verifier("elsewhere"))
			.andExpect(status().isForbidden());
		this.trees
			.ask(post("/api/v1/visits").content(forOther.formatted(tree, volunteer.id())),
					this.people.coordinator("mayland"))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/verifier"));
	}

	@Test
	void refusesWhatCanNotBePlanned() throws Exception {
		this.trees.county("refuseland", "VPE");
		String tree = this.trees.standing("refuseland", 100, "2026-05-02").tree();
		TestPerson verifier = this.people.verifier("refuseland");
		expectRefused(verifier, body(tree, "picnic"), "#/purpose");
		expectRefused(verifier, body("VPE-9999", "doubt"), "#/tree");
		expectRefused(verifier, with(tree, "\"byWhen\": \"2026-06-01\""), "#/byWhen");
		expectRefused(verifier, with(tree, "\"arrangedOn\": \"2026-06-01\""), "#/arrangedOn");
		expectRefused(verifier, with(tree, "\"arrangedAt\": \"2026-06-01T14:00:00Z\""), "#/arrangedAt");
		expectRefused(verifier, with(tree, "\"arrangedOn\": \"2999-06-01\", \"arrangedAt\": \"2999-06-01T14:00:00Z\""),
				"#/arrangedAt");
	}

	@Test
	void tellsItsOutcomeOnce() throws Exception {
		this.trees.county("onceland", "VPF");
		String tree = this.trees.standing("onceland", 100, "2026-05-02").tree();
		TestPerson verifier = this.people.verifier("onceland");
		String visit = plan(verifier, body(tree, "remeasure"));
		String refused = "{\"outcome\": \"refused\", \"visitedOn\": \"2026-06-10\", \"remarks\": \"no dogs\"}";
		this.trees.ask(post(visit + "/outcome").content(refused), verifier)
			.andExpect(status().isPreconditionRequired());
		this.trees.decide(visit, "/outcome", refused, verifier)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.open").value(false))
			.andExpect(jsonPath("$.outcome.outcome").value("refused"))
			.andExpect(jsonPath("$.outcome.visitedOn").value("2026-06-10"))
			.andExpect(jsonPath("$.outcome.remarks").value("no dogs"))
			.andExpect(jsonPath("$.outcome.conditionReport").value(nullValue()))
			.andExpect(jsonPath("$.outcome.by").value(verifier.id().toString()));
		this.trees.ask(post(visit + "/outcome").content(SEEN).header(HttpHeaders.IF_MATCH, "\"1-x\""), verifier)
			.andExpect(status().isPreconditionFailed());
		this.trees.decide(visit, "/outcome", SEEN, verifier).andExpect(status().isConflict());
	}

	@Test
	void refusesOutcomesThatCanNotBe() throws Exception {
		this.trees.county("outland", "VPG");
		TestTrees.Filed filed = this.trees.standing("outland", 100, "2026-05-02");
		TestTrees.Filed another = this.trees.standing("outland", 120, "2026-05-02");
		TestPerson verifier = this.people.verifier("outland");
		String visit = plan(verifier, body(filed.tree(), "remeasure"));
		expectOutcomeRefused(verifier, visit, "{\"outcome\": \"climbed\", \"visitedOn\": \"2026-06-10\"}", "#/outcome");
		expectOutcomeRefused(verifier, visit, "{\"outcome\": \"seen\", \"visitedOn\": \"2999-06-10\"}", "#/visitedOn");
		expectOutcomeRefused(verifier, visit, outcome("seen", "measurement", filed.measurement()), "#/measurement");
		expectOutcomeRefused(verifier, visit, outcome("measured", "measurement", another.measurement()),
				"#/measurement");
		expectOutcomeRefused(verifier, visit, outcome("seen", "conditionReport", UUID.randomUUID().toString()),
				"#/conditionReport");
		expectOutcomeRefused(verifier, visit,
				outcome("not-found", "conditionReport", report(filed.tree(), "damaged", verifier)),
				"#/conditionReport");
		this.trees.decide(visit, "/outcome", outcome("measured", "measurement", filed.measurement()), verifier)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.outcome.measurement").value(filed.measurement()));
	}

	@Test
	void isNotForOthersToTell() throws Exception {
		this.trees.county("tellland", "VPH");
		String tree = this.trees.standing("tellland", 100, "2026-05-02").tree();
		String visit = plan(this.people.verifier("tellland"), body(tree, "condition"));
		this.trees
			.ask(post(visit + "/outcome").content(SEEN).header(HttpHeaders.IF_MATCH, "\"1-x\""),
					this.people.verifier("tellland"))
			.andExpect(status().isNotFound());
	}

	@Test
	void reportsATreeThatAVerifierSawForTheCoordinatorToDecide() throws Exception {
		this.trees.county("seeland", "VPI");
		String tree = this.trees.standing("seeland", 100, "2026-05-02").tree();
		TestPerson verifier = this.people.verifier("seeland");
		String visit = plan(verifier, body(tree, "condition"));
		String told = this.trees.decide(visit, "/outcome", SEEN, verifier)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		String report = JsonPath.read(told, "$.outcome.conditionReport");
		this.trees.ask(get("/api/v1/condition-reports/" + report), verifier)
			.andExpect(jsonPath("$.condition").value("upright"))
			.andExpect(jsonPath("$.observedOn").value("2026-06-10"))
			.andExpect(jsonPath("$.status").value("waiting"));
	}

	@Test
	void sightsATreeAtOnceWhereACoordinatorTells() throws Exception {
		this.trees.county("sightland", "VPJ");
		String tree = this.trees.standing("sightland", 100, "2026-05-02").tree();
		TestPerson coordinator = this.people.coordinator("sightland");
		String visit = plan(this.people.verifier("sightland"), body(tree, "condition"));
		String dry = this.trees.decide(visit, "/outcome?dryRun=true", SEEN, coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.dryRun").value(true))
			.andExpect(jsonPath("$.changes[0].kind").value("visit-seen"))
			.andExpect(jsonPath("$.changes[0].scores.added[0].effectiveOn").value("2026-06-10"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(JsonPath.<Object>read(dry, "$.changes").toString()).doesNotContain("in leaf");
		assertThat((String) JsonPath.read(dry, "$.answer.outcome.outcome")).isEqualTo("seen");
		this.trees.ask(get(visit), coordinator).andExpect(jsonPath("$.outcome").value(nullValue()));
		String told = this.trees.decide(visit, "/outcome", SEEN, coordinator)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		String report = JsonPath.read(told, "$.outcome.conditionReport");
		this.trees.ask(get("/api/v1/condition-reports/" + report), coordinator)
			.andExpect(jsonPath("$.status").value("accepted"));
	}

	@Test
	void namesTheReportThatWasFiledInsteadOfFilingAnother() throws Exception {
		this.trees.county("visitnameland", "VPK");
		String tree = this.trees.standing("visitnameland", 100, "2026-05-02").tree();
		TestPerson verifier = this.people.verifier("visitnameland");
		String report = report(tree, "damaged", verifier);
		String visit = plan(verifier, body(tree, "condition"));
		this.trees.decide(visit, "/outcome", outcome("seen", "conditionReport", report), verifier)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.outcome.conditionReport").value(report));
		this.trees
			.ask(get("/api/v1/counties/visitnameland/condition-reports"), this.people.coordinator("visitnameland"))
			.andExpect(jsonPath("$.items.length()").value(1));
	}

	@Test
	void bringsATreeLookedForInVainTwiceToTheCoordinator() throws Exception {
		this.trees.county("vainland", "VPL");
		String tree = this.trees.standing("vainland", 100, "2026-05-02").tree();
		TestPerson coordinator = this.people.coordinator("vainland");
		lookInVain("vainland", tree);
		String queue = this.trees.ask(get("/api/v1/counties/vainland/queue"), coordinator)
			.andExpect(jsonPath("$.items[*].kind", hasItem("condition-report")))
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(JsonPath.<List<String>>read(queue, "$.items[*].kind")).doesNotContain("not-found");
		lookInVain("vainland", tree);
		this.trees.ask(get("/api/v1/counties/vainland/queue"), coordinator)
			.andExpect(jsonPath("$.items[?(@.kind == 'not-found')].tree").value(tree));
		this.trees.oaks("vainland").andExpect(jsonPath("$.items[0].title").value("champion"));
	}

	@Test
	void staysWithATreeThatIsMergedIntoAnother() throws Exception {
		this.trees.county("visitmergeland", "VPM");
		String kept = this.trees.standing("visitmergeland", 120, "2026-05-02").tree();
		String tree = this.trees.standing("visitmergeland", 100, "2026-05-02").tree();
		TestPerson coordinator = this.people.coordinator("visitmergeland");
		String visit = plan(coordinator, body(tree, "doubt"));
		this.trees
			.decide("/api/v1/trees/" + tree, "/merge",
					"{\"into\": \"%s\", \"reason\": \"the same tree\"}".formatted(kept), coordinator)
			.andExpect(status().isOk());
		this.trees.ask(post("/api/v1/visits").content(body(tree, "doubt")), coordinator)
			.andExpect(status().isConflict());
		this.trees.decide(visit, "/outcome", SEEN, coordinator).andExpect(status().isOk());
		this.trees.oaks("visitmergeland").andExpect(jsonPath("$.items.length()").value(1));
	}

	@Test
	void isInTheJournalWithItsTreeAndWithoutItsNotes() throws Exception {
		this.trees.county("noteland", "VPN");
		String tree = this.trees.standing("noteland", 100, "2026-05-02").tree();
		TestPerson verifier = this.people.verifier("noteland");
		String visit = plan(verifier, with(tree, "\"notes\": \"key under the pot\""));
		this.trees.decide(visit, "/outcome", NOT_FOUND, verifier).andExpect(status().isOk());
		String journal = this.trees.ask(get("/api/v1/counties/noteland/journal"), this.people.coordinator("noteland"))
			.andExpect(jsonPath("$.items[0].kind").value("visit-not-found"))
			.andExpect(jsonPath("$.items[0].trees[0].tag").value("VPN-0001"))
			.andExpect(jsonPath("$.items[1].kind").value("visit-planned"))
			.andExpect(jsonPath("$.items[1].trees[0].tag").value("VPN-0001"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(journal).doesNotContain("pot");
	}

	private void lookInVain(String county, String tree) throws Exception {
		TestPerson verifier = this.people.verifier(county);
		this.trees.decide(plan(verifier, body(tree, "condition")), "/outcome", NOT_FOUND, verifier)
			.andExpect(status().isOk());
	}

	private String report(String tree, String condition, TestPerson person) throws Exception {
		String answer = this.trees
			.ask(post("/api/v1/trees/" + tree + "/condition-reports")
				.content("{\"condition\": \"%s\", \"observedOn\": \"2026-06-10\"}".formatted(condition)), person)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		return JsonPath.read(answer, "$.id");
	}

	/** Plans the visit and answers its address. */
	private String plan(TestPerson person, String body) throws Exception {
		String location = this.trees.ask(post("/api/v1/visits").content(body), person)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.LOCATION);
		return String.valueOf(location);
	}

	private void expectRefused(TestPerson person, String body, String pointer) throws Exception {
		this.trees.ask(post("/api/v1/visits").content(body), person)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value(pointer));
	}

	private void expectOutcomeRefused(TestPerson person, String visit, String body, String pointer) throws Exception {
		this.trees.decide(visit, "/outcome", body, person)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value(pointer));
	}

	private void expectListed(TestPerson person, String query, String... visits) throws Exception {
		Object[] ids = Arrays.stream(visits).map(VisitHttpIT::id).toArray();
		this.trees.ask(get("/api/v1/visits" + query), person)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items[*].id", containsInAnyOrder(ids)));
	}

	private static String id(String address) {
		return address.substring(address.lastIndexOf('/') + 1);
	}

	private static String body(String tree, String purpose) {
		return "{\"tree\": \"%s\", \"purpose\": \"%s\"}".formatted(tree, purpose);
	}

	private static String with(String tree, String more) {
		return "{\"tree\": \"%s\", \"purpose\": \"doubt\", %s}".formatted(tree, more);
	}

	private static String outcome(String outcome, String field, String id) {
		return "{\"outcome\": \"%s\", \"visitedOn\": \"2026-06-10\", \"%s\": \"%s\"}".formatted(outcome, field, id);
	}

}
