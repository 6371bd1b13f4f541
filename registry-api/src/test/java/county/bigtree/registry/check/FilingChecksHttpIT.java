package county.bigtree.registry.check;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What the checks ask over HTTP, and who may know what they know.
 */
@RegistryTest
class FilingChecksHttpIT {

	private static final String LINE = "{\"type\": \"Polygon\", \"coordinates\": [[[-87, 40], [-86, 40], [-86, 41], [-87, 41], [-87, 40]]]}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MockMvc mvc;

	@Test
	void takesAFilingOnceItsQuestionsAreAnswered() throws Exception {
		this.trees.county("checkton", "CKA");
		TestPerson volunteer = this.people.volunteer("checkton");
		String metres = figures(100, 20, 60);
		nominate("checkton", volunteer, place(40.1, "nearby"), metres, "").andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/unanswered-checks"))
			.andExpect(jsonPath("$.checks.length()").value(1))
			.andExpect(jsonPath("$.checks[0].code").value("unit-slip"))
			.andExpect(jsonPath("$.checks[0].severity").value("question"))
			.andExpect(jsonPath("$.checks[0].figures.proposedUnit").value("m"))
			.andExpect(jsonPath("$.checks[0].figures.proposedHeightFeet").value(65.62));
		this.trees.ask(get("/api/v1/nominations"), volunteer).andExpect(jsonPath("$.items.length()").value(0));
		nominate("checkton", volunteer, place(40.1, "nearby"), metres, ", \"confirmedChecks\": [\"unit-slip\"]")
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.checks[?(@.code == 'unit-slip')]").isNotEmpty())
			.andExpect(jsonPath("$.measurement.checks[?(@.code == 'unit-slip')]").isNotEmpty());
	}

	@Test
	void asksNothingAboutAnOrdinaryTree() throws Exception {
		this.trees.county("plainton", "CKB");
		nominate("plainton", this.people.volunteer("plainton"), place(40.1, "nearby"), figures(100, 65, 60), "")
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.checks.length()").value(0));
	}

	@Test
	void keepsAHiddenTreeFromThoseWhoFileAndTellsTheCoordinator() throws Exception {
		this.trees.county("hiddenton", "CKC");
		standing("hiddenton", place(40.1, "county"), 100);
		nominate("hiddenton", this.people.volunteer("hiddenton"), place(40.1, "nearby"), figures(101, 65, 60), "")
			.andExpect(status().isCreated());
		nominate("hiddenton", this.people.coordinator("hiddenton"), place(40.1, "nearby"), figures(101, 65, 60), "")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.checks[0].code").value("likely-same-tree"))
			.andExpect(jsonPath("$.checks[0].figures.tree").value("CKC-0001"));
	}

	/** The same place and another one of the same cell of the public grid. */
	@Test
	void answersForTheWholeCellInWhichATreeIsShown() throws Exception {
		this.trees.county("cellton", "CKD");
		standing("cellton", place(40.1041, "nearby"), 100);
		for (double latitude : new double[] { 40.1041, 40.1059 }) {
			nominate("cellton", this.people.volunteer("cellton"), place(latitude, "nearby"), figures(101, 65, 60), "")
				.andExpect(status().isUnprocessableContent())
				.andExpect(jsonPath("$.checks[0].code").value("likely-same-tree"));
			nominate("cellton", this.people.volunteer("cellton"), place(latitude, "county"), figures(120, 65, 60), "")
				.andExpect(status().isCreated());
		}
	}

	@Test
	void putsTheExtraordinaryFirstInTheQueue() throws Exception {
		this.trees.county("giantton", "CKE");
		TestPerson volunteer = this.people.volunteer("giantton");
		nominate("giantton", volunteer, place(40.1, "nearby"), figures(100, 65, 60), "")
			.andExpect(status().isCreated());
		String giant = nominate("giantton", volunteer, place(40.3, "nearby"), figures(220, 165, 110),
				", " + TestTrees.CONFIRMED)
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.checks[0].code").value("beyond-species-limit"))
			.andExpect(jsonPath("$.checks[0].extraordinary").value(true))
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees.ask(get("/api/v1/counties/giantton/queue"), this.people.coordinator("giantton"))
			.andExpect(jsonPath("$.items[0].id").value(JsonPath.<String>read(giant, "$.id")))
			.andExpect(jsonPath("$.items[0].extraordinary").value(true))
			.andExpect(jsonPath("$.items[1].extraordinary").value(false));
	}

	@Test
	void asksWhyAStemShrankAndTellsThePublicNothing() throws Exception {
		this.trees.county("shrinkton", "CKF");
		String tree = standing("shrinkton", place(40.1, "nearby"), 100);
		TestPerson volunteer = this.people.volunteer("shrinkton");
		String smaller = "{\"measuredOn\": \"2026-06-02\", " + figures(95, 65, 60);
		remeasure(tree, volunteer, smaller + "}").andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.checks[0].code").value("girth-shrank"))
			.andExpect(jsonPath("$.checks[0].figures.girthBeforeInches").value(100.0));
		String again = remeasure(tree, volunteer, smaller + ", \"confirmedChecks\": [\"girth-shrank\"]}")
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.checks[0].code").value("girth-shrank"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees
			.signOff(JsonPath.read(again, "$.id"), this.people.verifier("shrinkton"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		this.mvc.perform(get("/api/v1/trees/" + tree + "/measurements"))
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].checks.length()").value(0));
		this.trees.ask(get("/api/v1/trees/" + tree + "/measurements"), this.people.verifier("shrinkton"))
			.andExpect(jsonPath("$.items[0].checks[0].code").value("girth-shrank"));
	}

	@Test
	void asksVerifiersAboutTheirOwnFigures() throws Exception {
		this.trees.county("secondlookton", "CKG");
		TestTrees.Filed filed = this.trees.nominate("secondlookton", this.people.volunteer("secondlookton"),
				"quercus-alba", TestTrees.measurement(100, "2026-05-02"));
		this.trees
			.signOff(filed.measurement(), this.people.verifier("secondlookton"),
					"{\"verdict\": \"corrected\", \"measurement\": {\"measuredOn\": \"2026-05-20\", "
							+ figures(110, 20, 60) + "}}")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/unanswered-checks"));
	}

	@Test
	void letsOnlyACoordinatorCountWhatWasFiledLongAfterItsDay() throws Exception {
		this.trees.county("tardyton", "CKJ", "{\"effectiveOn\": \"1800-01-01\"}");
		TestPerson volunteer = this.people.volunteer("tardyton");
		TestTrees.Filed late = this.trees.nominate("tardyton", volunteer, "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		this.trees.ask(get("/api/v1/measurements/" + late.measurement()), volunteer)
			.andExpect(jsonPath("$.checks[0].code").value("filed-late"))
			.andExpect(jsonPath("$.checks[0].severity").value("note"))
			.andExpect(jsonPath("$.checks[0].figures.oldestFilingMonths").value(18.0));
		this.trees.signOff(late.measurement(), this.people.verifier("tardyton"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"));
		this.trees.signOff(late.measurement(), this.people.coordinator("tardyton"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		this.trees.oaks("tardyton").andExpect(jsonPath("$.items.length()").value(1));
	}

	/** At 23:00 of a June evening there the sun is down. */
	@Test
	void comparesTheShadowWithTheSun() throws Exception {
		this.trees.county("shadowton", "CKH");
		String night = """
				"height": {"method": "shadow", "treeShadow": {"value": 65, "unit": "ft"},
				  "referenceHeight": {"value": 6, "unit": "ft"}, "referenceShadow": {"value": 6, "unit": "ft"},
				  "at": "2026-06-02T03:00:00Z"}""";
		nominate("shadowton", this.people.volunteer("shadowton"), place(40.1, "nearby"),
				girthAndCrown(100, 60) + ", " + night, "")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.checks[0].code").value("shadow-against-sun"));
	}

	@Test
	void proposesThePlaceThatWasMeant() throws Exception {
		this.trees.ask(post("/api/v1/counties").content("""
				{"key": "lineton", "name": "Lineton", "state": "Nowhere", "timeZone": "America/New_York",
				 "tagPrefix": "CKI", "boundary": %s}""".formatted(LINE)), this.people.administrator())
			.andExpect(status().isCreated());
		TestPerson volunteer = this.people.volunteer("lineton");
		nominate("lineton", volunteer, "{\"latitude\": 40.5, \"longitude\": 86.5}", figures(100, 65, 60), "")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.checks[0].code").value("swapped-coordinates"))
			.andExpect(jsonPath("$.checks[0].figures.proposedLongitude").value("-86.5"));
		nominate("lineton", volunteer, "{\"latitude\": 42.5, \"longitude\": -86.5}", figures(100, 65, 60), "")
			.andExpect(jsonPath("$.checks[0].code").value("outside-county"));
		nominate("lineton", volunteer, "{\"latitude\": 40.5, \"longitude\": -86.5}", figures(100, 65, 60), "")
			.andExpect(status().isCreated());
	}

	private String standing(String county, String place, int girth) throws Exception {
		String filed = nominate(county, this.people.volunteer(county), place, figures(girth, 65, 60), "")
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees
			.signOff(JsonPath.read(filed, "$.measurement.id"), this.people.verifier(county),
					"{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		return JsonPath.read(filed, "$.tree");
	}

	private ResultActions nominate(String county, TestPerson filer, String place, String figures, String more)
			throws Exception {
		return this.trees.ask(post("/api/v1/counties/" + county + "/nominations").content(
				"{\"species\": \"quercus-alba\", \"location\": %s, \"measurement\": {\"measuredOn\": \"2026-05-02\", %s}%s}"
					.formatted(place.replaceFirst("\\|.*", ""), figures, place.replaceFirst("^[^|]*\\|?", "") + more)),
				filer);
	}

	private ResultActions remeasure(String tree, TestPerson filer, String body) throws Exception {
		return this.trees.ask(post("/api/v1/trees/" + tree + "/measurements").content(body), filer);
	}

	/** A place, and after a stroke how much of it is shown. */
	private static String place(double latitude, String shown) {
		return "{\"latitude\": %s, \"longitude\": -86.2, \"accuracyMetres\": 8}|, \"access\": \"public\", \"visibility\": \"%s\""
			.formatted(latitude, shown);
	}

	private static String figures(int girth, int height, int spread) {
		return "%s, \"height\": {\"method\": \"pole\", \"height\": {\"value\": %d, \"unit\": \"ft\"}}"
			.formatted(girthAndCrown(girth, spread), height);
	}

	private static String girthAndCrown(int girth, int spread) {
		return """
				"girth": {"method": "tape", "girth": {"value": %d, "unit": "in"}},
				"crown": {"method": "axes", "axes": [{"value": %d, "unit": "ft"}, {"value": %d, "unit": "ft"}]}"""
			.formatted(girth, spread, spread);
	}

}
