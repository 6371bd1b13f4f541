package county.bigtree.registry.measurement;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.ResultActions;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Visits with a tape alone, and days that are known only to the month or year.
 */
@RegistryTest
class LackingFigureHttpIT {

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	private static final String CARRYING = """
			{"effectiveOn": "1800-01-01", "oldestFilingMonths": 1200, "carryForward": {"heightYears": 5, "crownYears": 8}}""";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void isKeptAndShownAndGivesNoScoreByDefault() throws Exception {
		this.trees.county("tapeland", "LFA");
		TestTrees.Filed filed = this.trees.standing("tapeland", 100, "2024-05-02");
		String again = girthAlone(filed, 110, "2026-05-02");
		this.trees.signOff(again, this.people.verifier("tapeland"), CONFIRMED).andExpect(status().isCreated());
		this.trees.oaks("tapeland")
			.andExpect(jsonPath("$.items[0].points").value(190.0))
			.andExpect(jsonPath("$.items[0].effectiveOn").value("2024-05-02"));
		this.trees.ask(get("/api/v1/measurements/" + again), filed.filer())
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.reduced.girthInches").value(110.0))
			.andExpect(jsonPath("$.reduced.heightFeet").value(Matchers.nullValue()))
			.andExpect(jsonPath("$.reduced.points").value(Matchers.nullValue()));
	}

	@Test
	void takesHeightAndCrownFromBeforeWhereTheRulesSaySoAndNamesTheirDays() throws Exception {
		this.trees.county("carryland", "LFB", CARRYING);
		TestTrees.Filed filed = this.trees.standing("carryland", 100, "2024-05-02");
		String again = girthAlone(filed, 110, "2026-05-02");
		this.trees.signOff(again, this.people.verifier("carryland"), CONFIRMED).andExpect(status().isCreated());
		this.trees.oaks("carryland")
			.andExpect(jsonPath("$.items[0].points").value(200.0))
			.andExpect(jsonPath("$.items[0].effectiveOn").value("2026-05-02"))
			.andExpect(jsonPath("$.items[0].heightFeet").value(80.0))
			.andExpect(jsonPath("$.items[0].heightMeasuredOn").value("2024-05-02"))
			.andExpect(jsonPath("$.items[0].crownMeasuredOn").value("2024-05-02"));
		this.trees.ask(get("/api/v1/trees/" + filed.tree() + "/scores"), filed.filer())
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].girthInches").value(110.0))
			.andExpect(jsonPath("$.items[0].heightMeasuredOn").value("2024-05-02"))
			.andExpect(jsonPath("$.items[1].heightMeasuredOn").value(Matchers.nullValue()));
		this.trees
			.decide("/api/v1/measurements/" + filed.measurement(), "/setting-aside", "{\"reason\": \"another tree\"}",
					this.people.coordinator("carryland"))
			.andExpect(status().isOk());
		this.trees.oaks("carryland").andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void aVerifiersTapeAloneChecksWhatWasFiledAndTakesItsPlaceOnlyWhenWhole() throws Exception {
		this.trees.county("checkland", "LFC");
		TestTrees.Filed filed = this.trees.nominate("checkland", this.people.volunteer("checkland"), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		this.trees
			.signOff(filed.measurement(), this.people.verifier("checkland"),
					"{\"verdict\": \"confirmed\", \"measurement\": %s}".formatted(girth(130, "2026-05-10")))
			.andExpect(status().isUnprocessableContent());
		this.trees
			.signOff(filed.measurement(), this.people.verifier("checkland"),
					"{\"verdict\": \"corrected\", \"measurement\": %s}".formatted(girth(130, "2026-05-10")))
			.andExpect(status().isUnprocessableContent());
		this.trees
			.signOff(filed.measurement(), this.people.verifier("checkland"),
					"{\"verdict\": \"confirmed\", \"measurement\": %s}".formatted(girth(101, "2026-05-10")))
			.andExpect(status().isCreated());
		this.trees.oaks("checkland")
			.andExpect(jsonPath("$.items[0].points").value(190.0))
			.andExpect(jsonPath("$.items[0].measurement").value(filed.measurement()));
	}

	@Test
	void aNominationWithoutAHeightIsAcceptedAndNotRanked() throws Exception {
		this.trees.county("stubland", "LFD");
		TestTrees.Filed filed = this.trees.nominate("stubland", this.people.volunteer("stubland"), "quercus-alba",
				girth(130, "2026-05-02"));
		this.trees.signOff(filed.measurement(), this.people.verifier("stubland"), CONFIRMED)
			.andExpect(status().isCreated());
		this.trees.oaks("stubland").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(get("/api/v1/nominations/" + filed.nomination()), filed.filer())
			.andExpect(jsonPath("$.status").value("accepted"));
		this.trees.ask(get("/api/v1/trees/" + filed.tree()), filed.filer())
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.score").value(Matchers.nullValue()));
	}

	@Test
	void aVisitWithoutAnyReadingIsRefused() throws Exception {
		this.trees.county("voidland", "LFE");
		TestTrees.Filed filed = this.trees.standing("voidland", 100, "2024-05-02");
		this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements").content("{\"measuredOn\": \"2026-05-02\"}"),
					filed.filer())
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].code").value("missing"));
	}

	@Test
	void aDayKnownToTheYearHoldsFromItsLastDayAndIsShownAsTheYear() throws Exception {
		this.trees.county("yearland", "LFF");
		TestTrees.Filed filed = this.trees.standing("yearland", 100, "1998");
		this.trees.ask(get("/api/v1/measurements/" + filed.measurement()), filed.filer())
			.andExpect(jsonPath("$.measuredOn").value("1998"));
		this.trees.oaks("yearland").andExpect(jsonPath("$.items[0].effectiveOn").value("1998-12-31"));
		this.trees.ask(get("/api/v1/counties/yearland/species/quercus-alba/standing?asOf=1998-12-30"), filed.filer())
			.andExpect(jsonPath("$.items.length()").value(0));
		file(filed, TestTrees.measurement(100, "2024-02")).andExpect(status().isCreated())
			.andExpect(jsonPath("$.measuredOn").value("2024-02"));
	}

	@Test
	void aYearThatIsNotOverIsNoMeasuringDayYet() throws Exception {
		this.trees.county("unoverland", "LFG");
		TestTrees.Filed filed = this.trees.standing("unoverland", 100, "2024-05-02");
		file(filed, TestTrees.measurement(100, String.valueOf(java.time.Year.now(java.time.ZoneOffset.UTC))))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/measuredOn"));
		file(filed, TestTrees.measurement(100, "June 1998")).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/measuredOn"));
	}

	private ResultActions file(TestTrees.Filed filed, String measurement) throws Exception {
		return this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/measurements").content(measurement),
				filed.filer());
	}

	private String girthAlone(TestTrees.Filed filed, int inches, String measuredOn) throws Exception {
		String answer = file(filed, girth(inches, measuredOn)).andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		return JsonPath.read(answer, "$.id");
	}

	private static String girth(int inches, String measuredOn) {
		return """
				{"measuredOn": "%s", "measuredBy": ["A. Finder"],
				 "girth": {"method": "tape", "girth": {"value": %d, "unit": "in"}}, %s}""".formatted(measuredOn, inches,
				TestTrees.CONFIRMED);
	}

}
