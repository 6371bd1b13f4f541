package county.bigtree.registry.county;

import java.util.List;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What a county's rules say beside who shares a title: the species of which trees hold
 * one, from where girth is taken, and what verifiers must bring.
 */
@RegistryTest
class RulebookHttpIT {

	private static final String ALL = "{\"effectiveOn\": \"2026-02-01\", \"oldestFilingMonths\": 1200}";

	private static final String MAPLES = """
			{"effectiveOn": "2026-01-01", "oldestFilingMonths": 1200, "eligibleSpecies": ["acer-rubrum"]}""";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void treesOfASpeciesThatIsNotListedKeepTheirRankAndHoldNoTitle() throws Exception {
		this.trees.county("listedspecies", "RBA");
		this.trees.standing("listedspecies", 100, "2025-05-02");
		this.trees.oaks("listedspecies")
			.andExpect(jsonPath("$.speciesEligible").value(true))
			.andExpect(jsonPath("$.items[0].title").value("champion"));
		rules("listedspecies", MAPLES).andExpect(status().isCreated());
		this.trees.oaks("listedspecies")
			.andExpect(jsonPath("$.speciesEligible").value(false))
			.andExpect(jsonPath("$.items[0].rank").value(1))
			.andExpect(jsonPath("$.items[0].title").value(nullValue()));
		this.trees.oakTitles("listedspecies").andExpect(jsonPath("$.items[0].ended").value("rulebook"));
		this.mvc.perform(get("/api/v1/counties/listedspecies/standings"))
			.andExpect(jsonPath("$.items[0].speciesEligible").value(false))
			.andExpect(jsonPath("$.items[0].holders.length()").value(0));
		this.mvc.perform(get("/counties/listedspecies/species/quercus-alba"))
			.andExpect(content().string(containsString("not on the county")));
		this.mvc.perform(get("/counties/listedspecies"))
			.andExpect(content().string(containsString("not on the county")));
		rules("listedspecies", ALL).andExpect(status().isCreated());
		this.trees.oaks("listedspecies")
			.andExpect(jsonPath("$.speciesEligible").value(true))
			.andExpect(jsonPath("$.items[0].title").value("champion"));
		this.trees.oakTitles("listedspecies").andExpect(jsonPath("$.items[0].began").value("rulebook"));
	}

	@Test
	void asksWhoFilesASpeciesThatIsNotListed() throws Exception {
		this.trees.county("maplesonly", "RBB", MAPLES);
		TestPerson volunteer = this.people.volunteer("maplesonly");
		nominate("maplesonly", volunteer,
				TestTrees.measurement(100, "2026-05-02").replace(", \"species-not-eligible\"", ""))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.checks[0].code").value("species-not-eligible"))
			.andExpect(jsonPath("$.checks[0].detail").value(containsString("will hold no title")));
		nominate("maplesonly", volunteer, TestTrees.measurement(100, "2026-05-02")).andExpect(status().isCreated());
		this.trees
			.ask(post("/api/v1/measuring/points").content(
					"{\"county\": \"maplesonly\", \"species\": \"quercus-alba\", " + TestTrees.readings(100) + "}"),
					volunteer)
			.andExpect(jsonPath("$.comparison.wouldRank").value(1))
			.andExpect(jsonPath("$.comparison.wouldHold").value(nullValue()))
			.andExpect(jsonPath("$.comparison.toLead").value(nullValue()));
	}

	@Test
	void showsWhatWasRecorded() throws Exception {
		this.trees.county("shownrules", "RBC");
		rules("shownrules", """
				{"effectiveOn": "2026-01-01", "slopeRule": "midslope", "checkReadingsRequired": true,
				 "eligibleSpecies": ["tilia-americana", "acer-rubrum"]}""").andExpect(status().isCreated());
		this.mvc.perform(get("/api/v1/counties/shownrules/rulebooks"))
			.andExpect(jsonPath("$.items[0].slopeRule").value("midslope"))
			.andExpect(jsonPath("$.items[0].checkReadingsRequired").value(true))
			.andExpect(jsonPath("$.items[0].eligibleSpecies").value(contains("acer-rubrum", "tilia-americana")))
			.andExpect(jsonPath("$.items[1].slopeRule").value("uphill"))
			.andExpect(jsonPath("$.items[1].eligibleSpecies").value(nullValue()));
	}

	@Test
	void listsOnlySpeciesThatAreKnown() throws Exception {
		this.trees.county("misspelt", "RBD");
		rules("misspelt", "{\"effectiveOn\": \"2026-01-01\", \"eligibleSpecies\": [\"quercus-nulla\"]}")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/eligibleSpecies"));
		rules("misspelt", "{\"effectiveOn\": \"2026-01-01\", \"eligibleSpecies\": []}")
			.andExpect(status().isUnprocessableContent());
	}

	@Test
	void aListedSpeciesIsFoldedOnlyIntoOneThatIsListedToo() throws Exception {
		this.trees.county("foldrules", "RBE");
		TestPerson coordinator = this.people.coordinator("foldrules");
		for (String epithet : List.of("lata", "arta")) {
			this.trees.ask(post("/api/v1/species").content("""
					{"scientificName": "Regulatio %s", "authority": "Probator", "source": "Flora of Nowhere",
					 "commonName": "%s rule"}""".formatted(epithet, epithet)), coordinator)
				.andExpect(status().isCreated());
		}
		rules("foldrules", "{\"effectiveOn\": \"2026-01-01\", \"eligibleSpecies\": [\"regulatio-arta\"]}")
			.andExpect(status().isCreated());
		fold().andExpect(status().isConflict()).andExpect(jsonPath("$.detail").value(containsString("foldrules")));
		rules("foldrules",
				"{\"effectiveOn\": \"2026-01-01\", \"eligibleSpecies\": [\"regulatio-arta\", \"regulatio-lata\"]}")
			.andExpect(status().isCreated());
		fold().andExpect(status().isOk());
		rules("foldrules", "{\"effectiveOn\": \"2026-01-01\", \"eligibleSpecies\": [\"regulatio-arta\"]}")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].code").value("folded"));
	}

	/** Those of the measuring day ask it, not those of the day of signing. */
	@Test
	void verifiersBringReadingsWhereTheRulesOfTheMeasuringDayAskForThem() throws Exception {
		this.trees.county("readingland", "RBF");
		rules("readingland", "{\"effectiveOn\": \"2026-05-01\", \"checkReadingsRequired\": true}")
			.andExpect(status().isCreated());
		TestPerson verifier = this.people.verifier("readingland");
		String filed = nominated("readingland", "2026-05-02");
		this.trees.signOff(filed, verifier, "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"))
			.andExpect(jsonPath("$.detail").value(containsString("a measurement of your own")));
		this.trees
			.signOff(filed, verifier,
					"""
							{"verdict": "confirmed", "measurement": {"measuredOn": "2026-05-20",
							 "girth": {"method": "tape", "girth": {"value": 100, "unit": "in"}}, %s}}"""
						.formatted(TestTrees.CONFIRMED))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.detail").value(containsString("lacks height and crown spread")));
		this.trees
			.signOff(filed, verifier,
					"{\"verdict\": \"confirmed\", \"measurement\": %s}"
						.formatted(TestTrees.measurement(100, "2026-05-20")))
			.andExpect(status().isCreated());
		this.trees.signOff(nominated("readingland", "2026-05-03"), verifier, "{\"verdict\": \"not-confirmed\"}")
			.andExpect(status().isCreated());
		this.trees.signOff(nominated("readingland", "2026-04-30"), verifier, "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
	}

	@Test
	void saysWhatAVisitLacksBeforeItIsFiled() throws Exception {
		this.trees.county("lackland", "RBG",
				"{\"effectiveOn\": \"1800-01-01\", \"carryForward\": {\"heightYears\": 5, \"crownYears\": 1}}");
		TestTrees.Filed filed = this.trees.standing("lackland", 100, "2025-09-02");
		String noHeight = """
				{"measuredOn": "2026-05-20", %s "girth": {"method": "tape", "girth": {"value": 100, "unit": "in"}},
				 "crown": {"method": "axes", "axes": [{"value": 40, "unit": "ft"}, {"value": 40, "unit": "ft"}]}}""";
		remeasure(filed, noHeight.formatted("")).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/unanswered-checks"))
			.andExpect(jsonPath("$.checks[0].code").value("lacking-figure"))
			.andExpect(jsonPath("$.checks[0].figures.lacking").value("height"))
			.andExpect(jsonPath("$.checks[0].detail").value(containsString("the height measured on 2025-09-02")));
		remeasure(filed, noHeight.formatted("\"confirmedChecks\": [\"lacking-figure\"],"))
			.andExpect(status().isCreated());
		remeasure(filed,
				"{\"measuredOn\": \"2026-05-20\", \"height\": {\"method\": \"pole\", \"height\": {\"value\": 80, \"unit\": \"ft\"}}}")
			.andExpect(jsonPath("$.checks[0].figures.lacking").value("girth and crown spread"))
			.andExpect(jsonPath("$.checks[0].detail").value(containsString("no points")));
	}

	@Test
	void notesAGirthThatWasNotTakenWhereTheRulesSay() throws Exception {
		this.trees.county("slopeland", "RBH",
				"{\"effectiveOn\": \"1800-01-01\", \"oldestFilingMonths\": 1200, \"slopeRule\": \"midslope\"}");
		String uphill = TestTrees.measurement(100, "2026-05-02")
			.replace("\"girth\": {\"method\": \"tape\"",
					"\"girth\": {\"method\": \"tape\", \"breastHeightFrom\": \"uphill\", \"heightAboveGround\": {\"value\": 130, \"unit\": \"cm\"}");
		nominate("slopeland", this.people.volunteer("slopeland"), uphill).andExpect(status().isCreated())
			.andExpect(jsonPath("$.measurement.readings.girth.breastHeightFrom").value("uphill"))
			.andExpect(jsonPath("$.checks[?(@.code == 'other-slope-rule')].figures.countyRule").value("midslope"))
			.andExpect(jsonPath("$.checks[?(@.code == 'metric-breast-height')].severity").value("note"));
		nominate("slopeland", this.people.volunteer("slopeland"), uphill.replace("uphill", "downhill"))
			.andExpect(status().isUnprocessableContent());
		nominate("slopeland", this.people.volunteer("slopeland"), uphill.replace("uphill", "midslope"))
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.checks[?(@.code == 'other-slope-rule')]").isEmpty());
	}

	@Test
	void tellsWhereToMeasureByTheCountysRules() throws Exception {
		this.trees.county("pointland", "RBI", "{\"effectiveOn\": \"1800-01-01\", \"slopeRule\": \"midslope\"}");
		this.mvc
			.perform(get("/api/v1/measuring/point").param("county", "pointland")
				.param("girthInches", "150.796")
				.param("slopePercent", "30"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.slopeRule").value("midslope"))
			.andExpect(jsonPath("$.feetAboveUphillGround").value(3.9));
		this.mvc.perform(get("/api/v1/measuring/point").param("county", "pointland").param("girthInches", "-1"))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/girthInches"));
		this.mvc.perform(get("/api/v1/measuring/point").param("county", "pointland").param("slopePercent", "30"))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].code").value("missing"));
		this.mvc.perform(get("/api/v1/measuring/point").param("county", "nowhere").param("girthInches", "150"))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/county"));
	}

	private ResultActions rules(String county, String body) throws Exception {
		return this.trees.ask(post("/api/v1/counties/" + county + "/rulebooks").content(body),
				this.people.coordinator(county));
	}

	private ResultActions fold() throws Exception {
		return this.trees.ask(post("/api/v1/species/regulatio-arta/fold")
			.content("{\"into\": \"regulatio-lata\", \"reason\": \"one species\"}"), this.people.administrator());
	}

	private String nominated(String county, String day) throws Exception {
		return this.trees
			.nominate(county, this.people.volunteer(county), "quercus-alba", TestTrees.measurement(100, day))
			.measurement();
	}

	private ResultActions nominate(String county, TestPerson filer, String measurement) throws Exception {
		return this.trees.ask(post("/api/v1/counties/" + county + "/nominations").content("""
				{"species": "quercus-alba", "location": {"latitude": 40.1, "longitude": -86.2, "accuracyMetres": 8},
				 "access": "public", "measurement": %s}""".formatted(measurement)), filer);
	}

	private ResultActions remeasure(TestTrees.Filed filed, String body) throws Exception {
		return this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/measurements").content(body), filed.filer());
	}

}
