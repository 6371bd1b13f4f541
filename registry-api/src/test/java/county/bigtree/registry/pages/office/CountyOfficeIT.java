package county.bigtree.registry.pages.office;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * What a coordinator does at the desk by pages alone: letters, owners, rules, journal.
 */
@RegistryTest
class CountyOfficeIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Test
	void makesAReportOfALetterAndTellsWhatBecameOfIt() throws Exception {
		this.trees.county("officeletters", "OFL");
		TestTrees.Filed tree = this.trees.standing("officeletters", 150, "2025-05-10");
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officeletters"));
		assertThat(coordinator.see("/desk/officeletters/letters")).contains("No letter waits");
		String letter = written("officeletters", tree.tree(), "The oak <by the mill> lost its top.");
		assertThat(coordinator.see("/desk/officeletters/letters")).contains("lost its top", "/letters/" + letter);
		String address = "/desk/officeletters/letters/" + letter;
		assertThat(coordinator.see(address)).contains("&lt;by the mill&gt;", "A. Neighbour", "A condition report");
		String form = coordinator.see(address + "?became=report");
		MockHttpServletResponse lacking = coordinator.send(address, "became", "report", "tree", tree.tree(),
				"condition", "damaged", "remarks", "the top is gone", "answer", "");
		assertThat(lacking.getStatus()).isEqualTo(422);
		assertThat(lacking.getContentAsString()).contains("href=\"#observedOn\"", "the top is gone");
		String told = coordinator.go(address, "became", "report", "tree", tree.tree(), "condition", "damaged",
				"observedOn", "2026-05-01", "remarks", "the top is gone", "answer", "Thank you, we look.", "key",
				Visitor.found(form, "name=\"key\" value=\"([^\"]+)\""));
		assertThat(told).contains("a condition report", "Thank you, we look.").doesNotContain("What becomes of it?");
		assertThat(coordinator.see("/desk/officeletters/letters")).contains("No letter waits");
		assertThat(coordinator.see("/desk/officeletters/letters?show=told")).contains("/letters/" + letter);
		assertThat(coordinator.go(address + "/erasure")).contains("These words were erased")
			.doesNotContain("lost its top", "A. Neighbour");
	}

	private String written(String county, String tree, String text) throws Exception {
		return JsonPath.read(this.mvc
			.perform(post("/api/v1/counties/" + county + "/letters").contentType(MediaType.APPLICATION_JSON)
				.content("{\"about\": \"condition\", \"tree\": \"%s\", \"text\": \"%s\", \"contact\": \"A. Neighbour\"}"
					.formatted(tree, text)))
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
	}

	@Test
	void hidesATreeUntilItsOwnerConsentsAndTellsWhy() throws Exception {
		this.trees.county("officeowners", "OFO");
		TestTrees.Filed tree = this.trees.standing("officeowners", 150, "2025-05-10");
		TestPerson person = this.people.coordinator("officeowners");
		Visitor coordinator = Visitor.signedIn(this.mvc, person);
		String tag = JsonPath.read(this.trees.ask(get("/api/v1/trees/" + tree.tree()), person)
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.tag");
		String found = coordinator.follow(coordinator.ask(get("/desk/officeowners/owners").param("tree", tag)));
		assertThat(found).contains("Nobody is on record as its owner");
		assertThat(seenByAnyone(tag)).isEqualTo(200);
		String address = "/trees/" + tag + "/owners";
		assertThat(coordinator.go(address, "name", "B. Landholder", "contact", "12 Mill Lane"))
			.contains("B. Landholder", "It is not listed", "Not every owner on record consents");
		assertThat(seenByAnyone(tag)).isEqualTo(404);
		String owner = Visitor.found(coordinator.see(address), address + "/([0-9a-f-]{36})/consents");
		MockHttpServletResponse nothing = coordinator.send(address + "/" + owner + "/consents", "how", "letter",
				"remarks", "by the gate");
		assertThat(nothing.getStatus()).isEqualTo(422);
		assertThat(nothing.getContentAsString()).contains("href=\"#purposes-" + owner, "by the gate");
		assertThat(coordinator.go(address + "/" + owner + "/consents", "purposes", "listing", "purposes", "visit",
				"given", "yes", "how", "letter"))
			.contains("Every owner on record consents to its being listed", "Not every owner consents to its exact");
		assertThat(seenByAnyone(tag)).isEqualTo(200);
		String page = coordinator.see(address);
		assertThat(coordinator.go(address + "/visibility", "visibility", "county", "shownBecause", "nesting herons",
				"seen", Visitor.found(page, "name=\"seen\" value=\"([^\"]+)\"")))
			.contains("no place is shown");
		assertThat(coordinator.go(address + "/" + owner + "/erasure")).doesNotContain("B. Landholder", "12 Mill Lane");
		assertThat(coordinator.go(address + "/" + owner + "/end", "reason", "sold")).contains("own it no more");
		assertThat(coordinator.see("/desk/officeowners/journal/openings")).contains("a tree&#39;s owners", tag);
	}

	private int seenByAnyone(String tag) throws Exception {
		return new Visitor(this.mvc).ask(get("/trees/" + tag)).getStatus();
	}

	@Test
	void looksAtNewRulesBeforeTheyChangeATitle() throws Exception {
		this.trees.county("officerules", "OFU");
		this.trees.standing("officerules", 160, "2025-05-10");
		this.trees.standing("officerules", 157, "2025-05-11");
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officerules"));
		String page = coordinator.see("/desk/officerules/rulebook");
		assertThat(page).contains("name=\"tieRule.n\" inputmode=\"decimal\" value=\"5\"", "in force today");
		String[] rules = rules(page);
		String titles = titles();
		MockHttpServletResponse looked = coordinator.send("/desk/officerules/rulebook", with(rules, "do", "look"));
		assertThat(looked.getStatus()).isEqualTo(200);
		assertThat(looked.getContentAsString()).contains("ceases to be co-champion", "Nothing is decided yet",
				"value=\"Within a point, as the committee decided\"");
		assertThat(titles()).isEqualTo(titles).contains("co-champion");
		assertThat(coordinator.go("/desk/officerules/rulebook", with(rules, "do", "decide")))
			.contains("The rules are decided", "Because: Within a point, as the committee decided");
		String open = JsonPath.read(titles(), "$.items[?(@.to == null)].title").toString();
		assertThat(open).isEqualTo("[\"champion\"]");
		assertThat(new Visitor(this.mvc).ask(get("/api/v1/counties/officerules/rulebooks")).getContentAsString())
			.doesNotContain("as the committee decided");
		assertThat(coordinator.see("/desk/officerules/journal")).contains("new rules",
				"Within a point, as the committee decided");
	}

	private String titles() throws Exception {
		return this.trees.oakTitles("officerules").andReturn().getResponse().getContentAsString();
	}

	/** The form as it stands in the page, with another tie rule and a reason. */
	private static String[] rules(String page) {
		return new String[] { "effectiveOn",
				Visitor.found(page, "name=\"effectiveOn\" type=\"date\" value=\"([^\"]+)\""), "tieRule.kind", "points",
				"tieRule.n", "1", "currencyYears", "8", "whenStale", "keeps", "sightingYears", "12", "remeasureWithin",
				"180", "requiredSignOffs", "1", "requiredSignOffsForTitle", "1", "slopeRule", "uphill",
				"oldestFilingMonths", "1200", "answerDays", "60", "reason",
				"Within a point, as the committee decided" };
	}

	private static String[] with(String[] fields, String... more) {
		String[] all = java.util.Arrays.copyOf(fields, fields.length + more.length);
		System.arraycopy(more, 0, all, fields.length, more.length);
		return all;
	}

	@Test
	void refusesRulesWithoutAReasonAndKeepsThem() throws Exception {
		this.trees.county("officenoreason", "OFN");
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officenoreason"));
		coordinator.see("/desk/officenoreason/rulebook");
		MockHttpServletResponse refused = coordinator.send("/desk/officenoreason/rulebook", "effectiveOn", "2026-01-01",
				"tieRule.kind", "points", "tieRule.n", "many", "do", "decide");
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("href=\"#reason\"", "href=\"#tieRule.n\"", "value=\"many\"");
	}

	@Test
	void tellsTheJournalByDay() throws Exception {
		this.trees.county("officejournal", "OFJ");
		this.trees.standing("officejournal", 150, "2025-05-10");
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officejournal"));
		assertThat(coordinator.see("/desk/officejournal/journal")).contains("county founded", "nominated", "signed off",
				"OFJ-0001");
		assertThat(coordinator.see("/desk/officejournal/journal?from=2001-01-01&to=2001-01-02"))
			.contains("Nothing changed in these days", "/api/v1/records?county=officejournal&amp;from=2001-01-01");
		assertThat(coordinator.ask(get("/desk/officejournal/journal?from=yesterday")).getStatus()).isEqualTo(400);
	}

}
