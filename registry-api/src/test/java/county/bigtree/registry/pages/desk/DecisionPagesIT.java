package county.bigtree.registry.pages.desk;

import java.util.Map;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.TestTrees.Filed;
import county.bigtree.registry.pages.TestPages;
import county.bigtree.registry.pages.TestPages.Sent;
import county.bigtree.registry.pages.TestPages.Visitor;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Decisions at a tree, on its sign-offs and on what was reported of it, by the pages.
 */
@RegistryTest
class DecisionPagesIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPages pages;

	@Autowired
	private TestPeople people;

	@Test
	void showsWhatADecisionWouldChangeAndChangesNothing() throws Exception {
		this.trees.county("pageslook", "PGL");
		this.trees.standing("pageslook", 100, "2024-05-02");
		Filed second = this.trees.standing("pageslook", 120, "2024-05-03");
		Visitor desk = this.pages.signIn(this.people.coordinator("pageslook"));
		String page = "/trees/PGL-0002/decisions/eligibility";
		Sent looked = desk.fill(page, "eligible", "no", "reason", "Planted in a <park>.", "do", "look");
		assertThat(looked.status()).isEqualTo(200);
		assertThat(looked.page()).contains("PGL-0002 would cease to be champion of white oak in pageslook",
				"PGL-0001 would become champion of white oak", "210.00 points", "Planted in a &lt;park&gt;.",
				"What it would change");
		this.trees.oaks("pageslook").andExpect(jsonPath("$.items[0].tree").value(second.tree()));
		String then = desk.send(page, desk.hidden(looked.page()), "eligible", "no", "reason", "A park.", "do", "decide")
			.taken();
		assertThat(desk.open(then)).contains("decided and recorded", "ruled not eligible");
		this.trees.oaks("pageslook").andExpect(jsonPath("$.items[0].tag").value("PGL-0001"));
	}

	@Test
	void leadsOnThroughAQueueThatIsLong() throws Exception {
		this.trees.county("pagesqueue", "PGQ");
		TestPerson volunteer = this.people.volunteer("pagesqueue");
		this.trees.nominate("pagesqueue", volunteer, "quercus-alba", TestTrees.measurement(100, "2024-05-02"));
		this.trees.nominate("pagesqueue", volunteer, "quercus-alba", TestTrees.measurement(90, "2024-05-02"));
		TestPerson coordinator = this.people.coordinator("pagesqueue");
		Visitor desk = this.pages.signIn(coordinator);
		assertThat(desk.open("/desk/pagesqueue")).contains("PGQ-0001", "PGQ-0002", "2 cases")
			.doesNotContain("From the beginning");
		String first = this.trees.ask(get("/api/v1/counties/pagesqueue/queue?limit=1"), coordinator)
			.andReturn()
			.getResponse()
			.getContentAsString();
		String rest = desk.open("/desk/pagesqueue?from=" + JsonPath.read(first, "$.next"));
		assertThat(rest)
			.contains("PGQ-0002", "The last 1 of what waits", "href=\"/desk/pagesqueue\">From the beginning")
			.doesNotContain("PGQ-0001");
	}

	@Test
	void keepsWhatWasTypedWhereSomebodyWasFaster() throws Exception {
		this.trees.county("pagesstale", "PGS");
		Filed filed = this.trees.standing("pagesstale", 100, "2024-05-02");
		TestPerson rival = this.people.coordinator("pagesstale");
		Visitor desk = this.pages.signIn(this.people.coordinator("pagesstale"));
		String page = "/trees/PGS-0001/decisions/identification";
		Map<String, String> hidden = desk.hidden(desk.open(page));
		this.trees
			.decide("/api/v1/trees/" + filed.tree(), "/identifications",
					"{\"species\": \"quercus-rubra\", \"by\": \"leaf\", \"reason\": \"pointed lobes\"}", rival)
			.andExpect(status().isOk());
		Sent late = desk.send(page, hidden, "species", "Acer rubrum", "by", "bark", "reason", "grey bark", "do",
				"decide");
		assertThat(late.status()).isEqualTo(412);
		assertThat(late.page()).contains("has changed since you read it", "northern red oak", "Acer rubrum",
				"grey bark");
		assertThat(desk
			.send(page, desk.hidden(late.page()), "species", "Acer rubrum", "by", "bark", "reason", "grey bark", "do",
					"decide")
			.taken()).endsWith("/decisions?done=identification");
		this.trees.ask(get("/api/v1/trees/PGS-0001"), rival).andExpect(jsonPath("$.species").value("acer-rubrum"));
	}

	@Test
	void comesBackFilledWithWhatIsWrong() throws Exception {
		this.trees.county("pageswrong", "PGW");
		this.trees.standing("pageswrong", 100, "2024-05-02");
		Visitor desk = this.pages.signIn(this.people.coordinator("pageswrong"));
		Sent sent = desk.fill("/trees/PGW-0001/decisions/location", "location.latitude", "north", "location.longitude",
				"-86.2", "reason", "the stone", "do", "look");
		assertThat(sent.status()).isEqualTo(422);
		assertThat(sent.page()).contains("Write a number", "href=\"#location.latitude\"", "value=\"north\"",
				"the stone");
		Sent unknown = desk.fill("/trees/PGW-0001/decisions/identification", "species", "oak", "by", "leaf", "reason",
				"lobes", "do", "look");
		assertThat(unknown.page()).contains("Several species go by that name");
		Sent silent = desk.fill("/trees/PGW-0001/decisions/eligibility", "eligible", "no", "do", "decide");
		assertThat(silent.status()).isEqualTo(422);
		assertThat(silent.page()).contains("href=\"#reason\"");
	}

	@Test
	void isForTheCoordinatorsOfTheCounty() throws Exception {
		this.trees.county("pagesmine", "PGM");
		this.trees.county("pagesother", "PGO");
		this.trees.standing("pagesmine", 100, "2024-05-02");
		Visitor other = this.pages.signIn(this.people.coordinator("pagesother"));
		assertThat(other.look("/trees/PGM-0001/decisions").getStatus()).isEqualTo(403);
		assertThat(other.look("/desk/pagesmine").getStatus()).isEqualTo(403);
		Visitor verifier = this.pages.signIn(this.people.verifier("pagesmine"));
		assertThat(verifier.look("/trees/PGM-0001/decisions/merge").getStatus()).isEqualTo(403);
	}

	@Test
	void mergesSideBySideAndTakesItBack() throws Exception {
		this.trees.county("pagesmerge", "PGG");
		this.trees.standing("pagesmerge", 100, "2024-05-02");
		Filed double1 = this.trees.standing("pagesmerge", 101, "2024-05-03");
		Visitor desk = this.pages.signIn(this.people.coordinator("pagesmerge"));
		assertThat(desk.open("/desk/pagesmerge/duplicates")).contains("PGG-0001", "PGG-0002",
				"Merge PGG-0002 into PGG-0001");
		String page = "/trees/PGG-0002/decisions/merge?into=PGG-0001";
		assertThat(desk.open(page)).contains("The tree to be kept", "value=\"PGG-0001\"");
		String kept = desk.fill(page, "into", "PGG-0001", "reason", "one tree", "do", "decide").taken();
		assertThat(desk.open(kept)).contains("PGG-0001");
		assertThat(desk.open("/desk/pagesmerge/duplicates")).contains("No two entries");
		String merged = "/trees/" + double1.tree() + "/decisions";
		assertThat(desk.open(merged)).contains("Take the merge back");
		desk.fill(merged + "/unmerge", "reason", "two after all", "do", "decide").taken();
		this.trees.oaks("pagesmerge").andExpect(jsonPath("$.items.length()").value(2));
	}

	@Test
	void splitsRulesOnStemsAndRecordsTheCondition() throws Exception {
		this.trees.county("pagessplit", "PGP");
		Filed filed = this.trees.standing("pagessplit", 100, "2024-05-02");
		Visitor desk = this.pages.signIn(this.people.coordinator("pagessplit"));
		String at = "/trees/PGP-0001/decisions/";
		assertThat(desk
			.fill(at + "stems", "form", "single", "keeps", filed.measurement(), "reason", "one pith", "do", "decide")
			.taken()).contains("done=stems");
		String other = desk
			.fill(at + "split", "measurements", filed.measurement(), "location.latitude", "40.2", "location.longitude",
					"-86.2", "reason", "another tree", "do", "decide")
			.taken();
		assertThat(desk.open(other)).contains("PGP-0002");
		Sent fell = desk.fill("/trees/PGP-0002/decisions/condition", "condition", "fallen", "observedOn", "2025-06-01",
				"between.earliest", "2025-05-01", "between.latest", "2025-05-20", "do", "look");
		assertThat(fell.page()).contains("PGP-0002 would cease to be champion of white oak in pagessplit: it fell",
				"What is known of past days, from 20 May 2025 on", "<td>none, from 20 May 2025 on</td>");
		desk.fill("/trees/PGP-0002/decisions/condition", "condition", "fallen", "observedOn", "2025-06-01", "do",
				"decide")
			.taken();
		this.trees.oaks("pagessplit").andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void decidesOnReportsAndOnMovesOverTheLine() throws Exception {
		this.trees.county("pageseast", "PGE");
		this.trees.county("pageswest", "PGH");
		Filed filed = this.trees.standing("pageseast", 100, "2024-05-02");
		TestPerson volunteer = this.people.volunteer("pageseast");
		this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/condition-reports")
				.content("{\"condition\": \"damaged\", \"observedOn\": \"2025-06-01\"}"), volunteer)
			.andExpect(status().isCreated());
		Visitor east = this.pages.signIn(this.people.coordinator("pageseast"));
		String report = between(east.open("/desk/pageseast/reports"), "href=\"/condition-reports/", "/decision\"");
		Sent looked = east.fill("/condition-reports/" + report + "/decision", "accept", "yes", "do", "look");
		assertThat(looked.status()).as(looked.page()).isEqualTo(200);
		assertThat(east.fill("/condition-reports/" + report + "/decision", "accept", "yes", "do", "decide").taken())
			.isEqualTo("/desk/pageseast/reports?done=report");
		assertThat(east.open("/desk/pageseast/due")).contains("PGE-0001", "it lost a part");
		String proposed = east
			.fill("/trees/PGE-0001/decisions/location", "location.latitude", "40.0", "location.longitude", "-86.0",
					"county", "pageswest", "reason", "the stone", "do", "decide")
			.taken();
		assertThat(east.open(proposed)).contains("It is proposed", "the stone");
		Visitor west = this.pages.signIn(this.people.coordinator("pageswest"));
		String relocation = between(west.open("/desk/pageswest/relocations"), "href=\"/relocations/", "/decision\"");
		assertThat(east.look("/relocations/" + relocation + "/decision").getStatus()).isEqualTo(403);
		assertThat(
				west.fill("/relocations/" + relocation + "/decision", "accept", "yes", "reason", "seen", "do", "look")
					.page())
			.contains("white oak in pageseast", "white oak in pageswest", "<td>190.00 points</td><td>none</td>",
					"<td>none</td><td>190.00 points</td>");
		west.fill("/relocations/" + relocation + "/decision", "accept", "yes", "reason", "seen", "do", "decide")
			.taken();
		this.trees.oaks("pageswest").andExpect(jsonPath("$.items[0].tree").value(filed.tree()));
	}

	@Test
	void saysYesToASignOffThatWaitsAndRevokesIt() throws Exception {
		this.trees.county("pagesyes", "PGY",
				"{\"effectiveOn\": \"1800-01-01\", \"oldestFilingMonths\": 1200, \"titleNeedsCoordinator\": true}");
		Filed filed = this.trees.nominate("pagesyes", this.people.volunteer("pagesyes"), "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		TestPerson verifier = this.people.verifier("pagesyes");
		String signOff = JsonPath.read(this.trees
			.signOff(filed.measurement(), verifier,
					"{\"verdict\": \"confirmed\", \"declares\": [\"I do not own it.\"], \"remarks\": \"Seen.\"}")
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
		Visitor seer = this.pages.signIn(verifier);
		assertThat(seer.open("/sign-offs/" + signOff)).contains("waits for a coordinator", "I do not own it.", "Seen.")
			.doesNotContain("/revocation");
		Visitor desk = this.pages.signIn(this.people.coordinator("pagesyes"));
		assertThat(desk.open("/desk/pagesyes")).contains("Sign-off that waits for your yes", "/sign-offs/" + signOff,
				"would be champion with 190.00 points");
		assertThat(desk.fill("/sign-offs/" + signOff + "/assent", "do", "look").page())
			.contains("PGY-0001 would become champion of white oak");
		assertThat(desk.open(desk.fill("/sign-offs/" + signOff + "/assent", "do", "decide").taken()))
			.contains("said yes to it");
		this.trees.oaks("pagesyes").andExpect(jsonPath("$.items[0].title").value("champion"));
		assertThat(desk.open("/trees/PGY-0001/decisions")).contains("/sign-offs/" + signOff);
		desk.fill("/sign-offs/" + signOff + "/revocation", "reason", "the wrong tree", "do", "decide").taken();
		assertThat(desk.open("/sign-offs/" + signOff)).contains("It was revoked: the wrong tree");
		this.trees.oaks("pagesyes").andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void movesACaseAlongAndSetsItsMeasurementAside() throws Exception {
		this.trees.county("pagescase", "PGC");
		Filed filed = this.trees.nominate("pagescase", this.people.volunteer("pagescase"), "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		TestPerson verifier = this.people.verifier("pagescase");
		Visitor desk = this.pages.signIn(this.people.coordinator("pagescase"));
		String page = "/desk/pagescase/nominations/" + filed.nomination();
		assertThat(desk.open("/desk/pagescase")).contains(page, "would be champion with 190.00 points");
		assertThat(desk.open(page))
			.contains("Assign it to a verifier", verifier.creditName(), "100", "Tape around the stem")
			.doesNotContain("Open it again");
		assertThat(desk
			.open(desk.fill(page, "move", "assign", "verifier", verifier.id().toString(), "do", "decide").taken()))
			.contains("with a verifier", "assigned to a verifier", verifier.creditName());
		Sent silent = desk.fill(page, "move", "return", "do", "decide");
		assertThat(silent.status()).isEqualTo(422);
		desk.fill(page, "move", "return", "reason", "Which field?", "do", "decide").taken();
		assertThat(desk.open(page)).contains("returned with a question", "Which field?");
		desk.fill("/measurements/" + filed.measurement() + "/setting-aside", "reason", "a slip", "do", "decide")
			.taken();
		assertThat(desk.open("/trees/PGC-0001/decisions")).contains("set aside");
	}

	private static String between(String page, String before, String after) {
		int start = page.indexOf(before);
		assertThat(start).as(page).isNotNegative();
		return page.substring(start + before.length(), page.indexOf(after, start));
	}

}
