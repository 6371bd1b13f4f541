package county.bigtree.registry.signoff;

import java.util.ArrayList;
import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.photo.TestPhotos;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What a county may ask for a title beyond what it asks for a rank. A tree of so many
 * inches has 90 points more (girth + height + a quarter of the spread), titles are shared
 * within 5 points, and a girth by Biltmore stick takes none: common practice, no source.
 */
@RegistryTest
class TitleRulesHttpIT {

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	private static final String OWN_FIGURES = "{\"verdict\": \"corrected\", \"measurement\": %s}";

	private static final String RULES = "{\"effectiveOn\": \"1800-01-01\", \"oldestFilingMonths\": 1200, %s}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private List<RegisterCheck> checks;

	@Test
	void asksForMoreSignOffsOnlyWhereATitleWouldRestOnThem() throws Exception {
		this.trees.county("twoword", "TTA", RULES.formatted("\"requiredSignOffsForTitle\": 2"));
		TestTrees.Filed first = nominate("twoword", TestTrees.measurement(100, "2026-05-02"));
		sign(first, this.people.verifier("twoword"));
		this.trees.oaks("twoword").andExpect(jsonPath("$.items.length()").value(0));
		sign(first, this.people.verifier("twoword"));
		this.trees.oaks("twoword").andExpect(jsonPath("$.items[0].title").value("champion"));
		sign(nominate("twoword", TestTrees.measurement(94, "2026-05-02")), this.people.verifier("twoword"));
		this.trees.oaks("twoword")
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[1].title").isEmpty());
		TestTrees.Filed near = nominate("twoword", TestTrees.measurement(95, "2026-05-02"));
		sign(near, this.people.verifier("twoword"));
		this.trees.oaks("twoword").andExpect(jsonPath("$.items.length()").value(2));
		sign(near, this.people.verifier("twoword"));
		this.trees.oaks("twoword").andExpect(jsonPath("$.items[1].title").value("co-champion"));
		nothingIsWrongWith("twoword");
	}

	@Test
	void ranksFiguresByAnyMethodAndGivesTitlesToThoseItNames() throws Exception {
		this.trees.county("methodton", "TTB", RULES.formatted("\"titleMethods\": [\"tape\", \"sine\", \"tangent\"]"));
		this.trees.standing("methodton", 120, "2026-05-02");
		TestTrees.Filed sine = nominate("methodton", """
				{"measuredOn": "2026-05-02", "measuredBy": ["A. Finder"], %s,
				  "girth": {"method": "tape", "girth": {"value": 100, "unit": "in"}},
				  "height": {"method": "sine", "topDistance": {"value": 100, "unit": "ft"},
				    "topAngle": {"value": 30, "unit": "deg"}, "baseDistance": {"value": 87, "unit": "ft"},
				    "baseAngle": {"value": -2, "unit": "deg"}},
				  "crown": {"method": "axes", "axes": [{"value": 40, "unit": "ft"}, {"value": 40, "unit": "ft"}]}}"""
			.formatted(TestTrees.CONFIRMED));
		sign(sine, this.people.verifier("methodton"));
		this.trees.oaks("methodton")
			.andExpect(jsonPath("$.items[0].points").value(210.0))
			.andExpect(jsonPath("$.items[0].title").isEmpty())
			.andExpect(jsonPath("$.items[1].rank").value(2))
			.andExpect(jsonPath("$.items[1].tree").value(sine.tree()))
			.andExpect(jsonPath("$.items[1].title").value("champion"));
		nothingIsWrongWith("methodton");
	}

	@Test
	void givesNoTitleToAGirthReadOffABiltmoreStick() throws Exception {
		this.trees.county("stickton", "TTC");
		String readings = """
				"girth": {"method": "biltmore", "diameterRead": {"value": 40, "unit": "in"}},
				"height": {"method": "pole", "height": {"value": 80, "unit": "ft"}},
				"crown": {"method": "axes", "axes": [{"value": 40, "unit": "ft"}, {"value": 40, "unit": "ft"}]}""";
		sign(nominate("stickton", "{\"measuredOn\": \"2026-05-02\", \"measuredBy\": [\"A. Finder\"], %s, %s}"
			.formatted(readings, TestTrees.CONFIRMED)), this.people.verifier("stickton"));
		this.trees.oaks("stickton").andExpect(jsonPath("$.items[0].title").isEmpty());
		TestTrees.Filed taped = this.trees.standing("stickton", 100, "2026-05-02");
		this.trees.oaks("stickton")
			.andExpect(jsonPath("$.items[1].tree").value(taped.tree()))
			.andExpect(jsonPath("$.items[1].title").value("champion"));
		this.mvc
			.perform(post("/api/v1/measuring/points").contentType(MediaType.APPLICATION_JSON)
				.content("{\"county\": \"stickton\", \"species\": \"quercus-alba\", " + readings + "}"))
			.andExpect(jsonPath("$.comparison.wouldRank").value(1))
			.andExpect(jsonPath("$.comparison.wouldHold").isEmpty());
		nothingIsWrongWith("stickton");
	}

	@Test
	void letsASignOffThatWouldChangeATitleWaitForACoordinator() throws Exception {
		this.trees.county("assenton", "TTD", RULES.formatted("\"titleNeedsCoordinator\": true"));
		TestPerson coordinator = this.people.coordinator("assenton");
		TestPerson verifier = this.people.verifier("assenton");
		TestTrees.Filed filed = nominate("assenton", TestTrees.measurement(100, "2026-05-02"));
		String signOff = sign(filed, verifier);
		this.trees.oaks("assenton").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(get("/api/v1/nominations/" + filed.nomination()), verifier)
			.andExpect(jsonPath("$.status").value("under-review"));
		this.trees.ask(get("/api/v1/counties/assenton/queue"), coordinator)
			.andExpect(jsonPath("$.items[?(@.kind == 'sign-off')].id").value(signOff))
			.andExpect(jsonPath("$.items[?(@.kind == 'sign-off')].wouldHold").value("champion"));
		String path = "/api/v1/sign-offs/" + signOff;
		this.trees.ask(get(path), verifier).andExpect(jsonPath("$.waitsForCoordinator").value(true));
		this.trees.ask(post(path + "/assent").content("{}"), coordinator).andExpect(status().isPreconditionRequired());
		this.trees.ask(post(path + "/assent").content("{}").header(HttpHeaders.IF_MATCH, "\"1-x\""), verifier)
			.andExpect(status().isForbidden());
		this.trees.decide(path, "/assent?dryRun=true", "{}", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.changes[0].titles.began[0].title").value("champion"));
		this.trees.oaks("assenton").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.decide(path, "/assent", "{\"reason\": \"both photos looked at\"}", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.waitsForCoordinator").value(false))
			.andExpect(jsonPath("$.assentedBy").value(coordinator.creditName()));
		this.trees.oaks("assenton").andExpect(jsonPath("$.items[0].title").value("champion"));
		this.trees.ask(get("/api/v1/nominations/" + filed.nomination()), verifier)
			.andExpect(jsonPath("$.status").value("accepted"));
		this.trees.ask(post(path + "/assent").content("{}").header(HttpHeaders.IF_MATCH, "\"1-x\""), coordinator)
			.andExpect(status().isPreconditionFailed())
			.andExpect(jsonPath("$.present.assentedBy").value(coordinator.creditName()));
		this.trees.decide(path, "/assent", "{}", coordinator).andExpect(status().isConflict());
		assertThat(told(filed, coordinator)).contains(
				"The sign-off by %s on the measurement of TTD-0001 taken on 2 May 2026 was left to a coordinator's yes: it would change who holds a title."
					.formatted(verifier.creditName()),
				"%s gave the coordinator's yes to the sign-off by %s on the measurement of TTD-0001 taken on 2 May 2026, which changes who holds a title."
					.formatted(coordinator.creditName(), verifier.creditName()));
		nothingIsWrongWith("assenton");
	}

	/** 85 in would leave the title of 100 in to the 92 in beside it. */
	@Test
	void leavesATitleWhereItIsWhileOtherFiguresWait() throws Exception {
		this.trees.county("holdton", "TTE", RULES.formatted("\"titleNeedsCoordinator\": true"));
		TestPerson coordinator = this.people.coordinator("holdton");
		TestTrees.Filed champion = nominate("holdton", TestTrees.measurement(100, "2026-05-02"));
		sign(champion, coordinator);
		this.trees.oaks("holdton").andExpect(jsonPath("$.items[0].title").value("champion"));
		sign(nominate("holdton", TestTrees.measurement(92, "2026-05-02")), this.people.verifier("holdton"));
		this.trees.oaks("holdton").andExpect(jsonPath("$.items[1].rank").value(2));
		String corrected = JsonPath
			.read(this.trees
				.signOff(champion.measurement(), this.people.verifier("holdton"),
						"{\"verdict\": \"corrected\", \"measurement\": " + TestTrees.measurement(85, "2026-05-20")
								+ "}")
				.andExpect(status().isCreated())
				.andExpect(jsonPath("$.waitsForCoordinator").value(true))
				.andReturn()
				.getResponse()
				.getContentAsString(), "$.id");
		this.trees.oaks("holdton")
			.andExpect(jsonPath("$.items[0].tree").value(champion.tree()))
			.andExpect(jsonPath("$.items[0].points").value(190.0));
		this.trees.ask(get("/api/v1/measurements/" + champion.measurement()), coordinator)
			.andExpect(jsonPath("$.status").value("counting"));
		String path = "/api/v1/sign-offs/" + corrected;
		this.trees.decide(path, "/assent", "{}", coordinator).andExpect(status().isOk());
		this.trees.oaks("holdton")
			.andExpect(jsonPath("$.items[0].points").value(182.0))
			.andExpect(jsonPath("$.items[0].title").value("champion"))
			.andExpect(jsonPath("$.items[1].points").value(175.0));
		nothingIsWrongWith("holdton");
	}

	@Test
	void refusesTheYesOfACoordinatorWhoFoundTheTree() throws Exception {
		this.trees.county("findton", "TTF", RULES.formatted("\"titleNeedsCoordinator\": true"));
		TestPerson finder = this.people.coordinator("findton");
		TestTrees.Filed filed = this.trees.nominate("findton", finder, "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		String path = "/api/v1/sign-offs/" + sign(filed, this.people.verifier("findton"));
		this.trees.decide(path, "/assent", "{}", finder).andExpect(status().isForbidden());
		TestPerson other = this.people.coordinator("findton");
		this.trees.decide(path, "/revocation", "{\"reason\": \"a fork was taped\"}", other).andExpect(status().isOk());
		this.trees.decide(path, "/assent", "{}", other).andExpect(status().isConflict());
		this.trees.ask(get("/api/v1/counties/findton/queue"), other)
			.andExpect(jsonPath("$.items[?(@.kind == 'sign-off')]").isEmpty());
		nothingIsWrongWith("findton");
	}

	@Test
	void refusesASignOffThatBringsATitleUntilEnoughPhotosArePassed() throws Exception {
		this.trees.county("photoston", "TTH", RULES.formatted("\"photosRequired\": 2"));
		TestTrees.Filed filed = nominate("photoston", TestTrees.measurement(100, "2026-05-02"));
		TestPerson verifier = this.people.verifier("photoston");
		TestPerson coordinator = this.people.coordinator("photoston");
		String ofTree = sendAndPass("/api/v1/trees/" + filed.tree() + "/photos", filed.filer(), verifier);
		String waiting = TestPhotos.sent(this.trees, "/api/v1/measurements/" + filed.measurement() + "/photos",
				filed.filer(), "text", "the trunk");
		this.trees.signOff(filed.measurement(), verifier, CONFIRMED)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"))
			.andExpect(jsonPath("$.photosRequired").value(2))
			.andExpect(jsonPath("$.photosPassed").value(1));
		this.trees.signOff(filed.measurement(), verifier, "{\"verdict\": \"not-confirmed\"}")
			.andExpect(status().isCreated());
		TestPerson other = this.people.verifier("photoston");
		this.trees.signOff(filed.measurement(), other, OWN_FIGURES.formatted(TestTrees.measurement(101, "2026-05-03")))
			.andExpect(status().isUnprocessableContent());
		this.trees.decide("/api/v1/photos/" + waiting, "/decisions", "{\"decision\": \"pass\"}", verifier)
			.andExpect(status().isOk());
		this.trees.signOff(filed.measurement(), other, OWN_FIGURES.formatted(TestTrees.measurement(101, "2026-05-03")))
			.andExpect(status().isCreated());
		this.trees.oaks("photoston").andExpect(jsonPath("$.items[0].title").value("champion"));
		this.trees
			.decide("/api/v1/photos/" + ofTree, "/decisions",
					"{\"decision\": \"take-back\", \"reason\": \"a face in it\"}", coordinator)
			.andExpect(status().isOk());
		this.trees.oaks("photoston").andExpect(jsonPath("$.items[0].title").value("champion"));
		sign(nominate("photoston", TestTrees.measurement(90, "2026-05-02")), verifier);
		this.trees.oaks("photoston").andExpect(jsonPath("$.items.length()").value(2));
		nothingIsWrongWith("photoston");
	}

	private String sendAndPass(String address, TestPerson sender, TestPerson verifier) throws Exception {
		String photo = TestPhotos.sent(this.trees, address, sender, "text", "the whole oak");
		this.trees.decide("/api/v1/photos/" + photo, "/decisions", "{\"decision\": \"pass\"}", verifier)
			.andExpect(status().isOk());
		return photo;
	}

	@Test
	void rejectsRulesThatContradictThemselves() throws Exception {
		this.trees.county("ruleton", "TTG");
		TestPerson coordinator = this.people.coordinator("ruleton");
		refusesRules(coordinator, "\"requiredSignOffs\": 3, \"requiredSignOffsForTitle\": 2");
		refusesRules(coordinator, "\"titleMethods\": [\"guess\"]");
		refusesRules(coordinator, "\"titleMethods\": [\"biltmore\"]");
		refusesRules(coordinator, "\"photosRequired\": 11");
	}

	private void refusesRules(TestPerson coordinator, String rules) throws Exception {
		this.trees
			.ask(post("/api/v1/counties/ruleton/rulebooks")
				.content("{\"effectiveOn\": \"2026-01-01\", \"reason\": \"a try\", %s}".formatted(rules)), coordinator)
			.andExpect(status().isUnprocessableContent());
	}

	private TestTrees.Filed nominate(String county, String measurement) throws Exception {
		return this.trees.nominate(county, this.people.volunteer(county), "quercus-alba", measurement);
	}

	private String sign(TestTrees.Filed filed, TestPerson verifier) throws Exception {
		ResultActions given = this.trees.signOff(filed.measurement(), verifier, CONFIRMED)
			.andExpect(status().isCreated());
		return JsonPath.read(given.andReturn().getResponse().getContentAsString(), "$.id");
	}

	private List<String> told(TestTrees.Filed filed, TestPerson asker) throws Exception {
		return JsonPath.read(this.trees.ask(get("/api/v1/trees/" + filed.tree() + "/story"), asker)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.items[*].facts[*].sentence");
	}

	private void nothingIsWrongWith(String county) {
		List<String> found = new ArrayList<>();
		this.checks.forEach((check) -> check.look(new Findings(1000, found::add, (looked) -> {
		})));
		assertThat(found).noneMatch((sentence) -> sentence.contains(county));
	}

}
