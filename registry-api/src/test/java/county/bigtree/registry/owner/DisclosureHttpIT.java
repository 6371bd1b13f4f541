package county.bigtree.registry.owner;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.standing.KeepWitnesses;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What is shown of trees follows their owners' consents of today, in every answer; what
 * ranks and holds titles does not.
 */
@RegistryTest
class DisclosureHttpIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private KeepWitnesses witnesses;

	@Autowired
	private List<RegisterCheck> checks;

	@Test
	void anUnlistedTreeKeepsItsRankAndTitleAndNothingLeadsToIt() throws Exception {
		this.trees.county("hushhere", "DZA");
		TestTrees.Filed hidden = this.trees.standing("hushhere", 120, "2020-05-02");
		TestTrees.Filed second = this.trees.standing("hushhere", 100, "2020-05-02");
		String tag = tag(hidden);
		Instant before = Instant.now();
		ownedBySomebody(hidden, this.people.coordinator("hushhere"));
		this.trees.oaks("hushhere")
			.andExpect(jsonPath("$.total").value(2))
			.andExpect(jsonPath("$.items[0].rank").value(1))
			.andExpect(jsonPath("$.items[0].title").value("champion"))
			.andExpect(jsonPath("$.items[0].points").value(210.0))
			.andExpect(jsonPath("$.items[0].girthInches").value(120.0))
			.andExpect(jsonPath("$.items[0].listed").value(false))
			.andExpect(jsonPath("$.items[0].tree").value(nullValue()))
			.andExpect(jsonPath("$.items[0].tag").value(nullValue()))
			.andExpect(jsonPath("$.items[0].measurement").value(nullValue()))
			.andExpect(jsonPath("$.items[1].rank").value(2))
			.andExpect(jsonPath("$.items[1].listed").value(true))
			.andExpect(jsonPath("$.items[1].tree").value(second.tree()));
		String oaks = "/api/v1/counties/hushhere/species/quercus-alba";
		for (String address : List.of(oaks + "/standing", oaks + "/standing?knownAt=" + before,
				oaks + "/standing?asOf=2021-01-01", oaks + "/titles", oaks + "/story", oaks + "/story?limit=1",
				"/api/v1/counties/hushhere/standings", "/api/v1/counties/hushhere/standings?asOf=2021-01-01",
				"/api/v1/species/quercus-alba/standing?counties=hushhere", "/api/v1/trees?county=hushhere",
				"/api/v1/trees?tag=" + tag, "/api/v1/trees?query=" + tag, "/api/v1/trees/" + second.tree() + "/story",
				"/counties/hushhere", "/counties/hushhere/species/quercus-alba")) {
			for (@Nullable
			TestPerson asker : new @Nullable TestPerson[] { null, this.people.volunteer("hushhere") }) {
				assertThat(read(address, asker)).as(address)
					.doesNotContain(hidden.tree(), tag, hidden.measurement(), hidden.nomination());
			}
		}
		for (String address : List.of("/api/v1/trees/%s", "/api/v1/trees/%s/scores", "/api/v1/trees/%s/measurements",
				"/api/v1/trees/%s/story", "/trees/%s", "/t/%s")) {
			for (String name : List.of(hidden.tree(), tag)) {
				this.mvc.perform(get(address.formatted(name))).andExpect(status().isNotFound());
			}
		}
		TestPerson volunteer = this.people.volunteer("hushhere");
		this.trees.ask(get("/api/v1/trees/" + tag), volunteer).andExpect(status().isNotFound());
		this.trees
			.ask(post("/api/v1/trees/" + tag + "/condition-reports")
				.content("{\"condition\": \"upright\", \"observedOn\": \"2026-05-02\"}"), volunteer)
			.andExpect(status().isNotFound());
		this.trees
			.ask(post("/api/v1/trees/" + tag + "/measurements").content(TestTrees.measurement(130, "2026-05-02")),
					volunteer)
			.andExpect(status().isNotFound());
		assertThat(read(oaks + "/story", null)).contains("not shown at its owner's wish");
		assertThat(read("/counties/hushhere", null)).contains("not shown at its owner");
	}

	@Test
	void itsPeopleStillSeeAnUnlistedTree() throws Exception {
		this.trees.county("hushwork", "DCB");
		TestTrees.Filed hidden = this.trees.standing("hushwork", 120, "2020-05-02");
		ownedBySomebody(hidden, this.people.coordinator("hushwork"));
		for (TestPerson insider : List.of(this.people.verifier("hushwork"), this.people.coordinator("hushwork"),
				hidden.filer())) {
			this.trees.ask(get("/api/v1/trees/" + hidden.tree()), insider)
				.andExpect(status().isOk())
				.andExpect(jsonPath("$.listed").value(false))
				.andExpect(jsonPath("$.position").doesNotExist());
			this.trees.ask(get("/api/v1/trees/" + hidden.tree() + "/story"), insider)
				.andExpect(status().isOk())
				.andExpect(jsonPath("$.items[0].facts[0].tree").value(hidden.tree()));
		}
		assertThat(read("/api/v1/counties/hushwork/species/quercus-alba/story", this.people.verifier("hushwork")))
			.contains(hidden.tree())
			.doesNotContain("owner's wish");
	}

	@Test
	void allOwnersMustConsentAndConsentsRunOutByThemselves() throws Exception {
		this.trees.county("hushjoint", "DCC");
		TestTrees.Filed filed = this.trees.standing("hushjoint", 120, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("hushjoint");
		String one = ownedBySomebody(filed, coordinator);
		String other = ownedBySomebody(filed, coordinator);
		say(one, "\"listing\", \"place\"", null, coordinator);
		assertListed(filed, false);
		say(other, "\"listing\"", null, coordinator);
		assertListed(filed, true);
		say(other, "\"listing\"", "2020-12-31", coordinator);
		assertListed(filed, false);
		say(other, "\"listing\"", LocalDate.now().plusDays(2).toString(), coordinator);
		assertListed(filed, true);
		this.trees.ask(post("/api/v1/owners/" + other + "/consents")
			.content("{\"purposes\": [\"listing\"], \"given\": false, \"how\": \"telephone\"}"), coordinator);
		assertListed(filed, false);
		this.trees.ask(post("/api/v1/owners/" + other + "/end").content("{\"reason\": \"sold\"}"), coordinator)
			.andExpect(status().isOk());
		assertListed(filed, true);
	}

	@Test
	void aCoordinatorMayShowLessThanTheOwnersAllowAndNeverMore() throws Exception {
		this.trees.county("hushplace", "DCD");
		TestTrees.Filed filed = this.trees.standing("hushplace", 120, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("hushplace");
		String tree = "/api/v1/trees/" + filed.tree();
		String exact = "{\"visibility\": \"exact\", \"reason\": \"the owner said so\"}";
		this.trees.decide(tree, "/visibility", exact, coordinator).andExpect(status().isOk());
		this.mvc.perform(get(tree)).andExpect(jsonPath("$.position.latitude").value(40.1));
		String owner = ownedBySomebody(filed, coordinator);
		say(owner, "\"listing\"", null, coordinator);
		this.mvc.perform(get(tree)).andExpect(jsonPath("$.position.latitude").value(closeTo(40.105, 1e-6)));
		this.trees.decide(tree, "/visibility", exact, coordinator)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"));
		say(owner, "\"place\"", null, coordinator);
		this.mvc.perform(get(tree)).andExpect(jsonPath("$.position.latitude").value(40.1));
		this.trees
			.decide(tree, "/visibility", "{\"visibility\": \"county\", \"reason\": \"visitors trample it\"}",
					coordinator)
			.andExpect(status().isOk());
		this.mvc.perform(get(tree)).andExpect(jsonPath("$.position").doesNotExist());
	}

	@Test
	void bytesThatSomebodyHoldsAreNotModifiedOnlyWhileTheyShowWhatMayBeShown() throws Exception {
		this.trees.county("hushbytes", "DCE");
		TestTrees.Filed filed = this.trees.standing("hushbytes", 120, "2020-05-02");
		String address = "/api/v1/counties/hushbytes/species/quercus-alba/standing?asOf=2021-01-01&knownAt="
				+ Instant.now();
		String held = String
			.valueOf(this.mvc.perform(get(address)).andReturn().getResponse().getHeader(HttpHeaders.ETAG));
		this.mvc.perform(get(address).header(HttpHeaders.IF_NONE_MATCH, held)).andExpect(status().isNotModified());
		TestPerson coordinator = this.people.coordinator("hushbytes");
		String owner = ownedBySomebody(filed, coordinator);
		this.mvc.perform(get(address).header(HttpHeaders.IF_NONE_MATCH, held))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items[0].points").value(210.0))
			.andExpect(jsonPath("$.items[0].listed").value(false));
		say(owner, "\"listing\"", null, coordinator);
		this.mvc.perform(get(address).header(HttpHeaders.IF_NONE_MATCH, held)).andExpect(status().isNotModified());
	}

	@Test
	void aCursorNamesNoTree() throws Exception {
		this.trees.county("hushpages", "DCF");
		TestTrees.Filed hidden = this.trees.standing("hushpages", 120, "2020-05-02");
		TestTrees.Filed second = this.trees.standing("hushpages", 100, "2020-05-02");
		ownedBySomebody(hidden, this.people.coordinator("hushpages"));
		for (String address : List.of("/api/v1/counties/hushpages/species/quercus-alba/standing?limit=1",
				"/api/v1/species/quercus-alba/standing?counties=hushpages&limit=1")) {
			String next = JsonPath.read(read(address, null), "$.next");
			assertThat(new String(Base64.getUrlDecoder().decode(next), StandardCharsets.UTF_8))
				.doesNotContain(hidden.tree(), hidden.measurement());
			this.mvc.perform(get(address + "&cursor=" + next))
				.andExpect(status().isOk())
				.andExpect(jsonPath("$.items[0].tree").value(second.tree()))
				.andExpect(jsonPath("$.items[0].rank").value(2))
				.andExpect(jsonPath("$.next").value(nullValue()));
		}
	}

	@Test
	void aFilerIsNotAskedAboutATreeThatIsNotListed() throws Exception {
		this.trees.county("hushnear", "DCG");
		TestTrees.Filed hidden = this.trees.standing("hushnear", 100, "2020-05-02");
		String again = """
				{"species": "quercus-alba", "location": {"latitude": 40.1, "longitude": -86.2, "accuracyMetres": 8},
				 "measurement": %s}"""
			.formatted(TestTrees.measurement(100, "2020-05-02").replace(", \"likely-same-tree\"", ""));
		TestPerson volunteer = this.people.volunteer("hushnear");
		nominate("hushnear", again, volunteer).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.checks[0].code").value("likely-same-tree"));
		ownedBySomebody(hidden, this.people.coordinator("hushnear"));
		nominate("hushnear", again, volunteer).andExpect(status().isCreated());
		nominate("hushnear", again, this.people.coordinator("hushnear")).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.checks[0].code").value("likely-same-tree"));
	}

	@Test
	void aTreeSplitOffIsNotShownBeforeItsOwnersAreAsked() throws Exception {
		this.trees.county("hushsplit", "DCH");
		TestTrees.Filed filed = this.trees.standing("hushsplit", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("hushsplit");
		String owner = ownedBySomebody(filed, coordinator);
		say(owner, "\"listing\"", null, coordinator);
		String answer = this.trees
			.decide("/api/v1/trees/" + filed.tree(), "/split",
					"""
							{"measurements": ["%s"], "location": {"latitude": 40.1, "longitude": -86.2}, "reason": "two stems"}"""
						.formatted(filed.measurement()),
					coordinator)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		String newTree = JsonPath.read(answer, "$.id");
		this.mvc.perform(get("/api/v1/trees/" + newTree)).andExpect(status().isNotFound());
		this.trees.ask(get("/api/v1/trees/" + newTree + "/owners"), coordinator)
			.andExpect(jsonPath("$.items[0].name").value("C. Landholder"))
			.andExpect(jsonPath("$.items[0].consents.length()").value(0));
		this.trees.oaks("hushsplit")
			.andExpect(jsonPath("$.items[0].listed").value(false))
			.andExpect(jsonPath("$.items[0].points").value(190.0));
	}

	@Test
	void whatIsShownNeitherBearsOnWitnessesNorOnTheRegistersBeingWhole() throws Exception {
		this.trees.county("hushwitness", "DCI");
		TestTrees.Filed filed = this.trees.standing("hushwitness", 100, "2020-05-02");
		this.witnesses.keep("hushwitness", LocalDate.EPOCH);
		TestPerson coordinator = this.people.coordinator("hushwitness");
		ownedBySomebody(filed, coordinator);
		this.trees.ask(get("/api/v1/trees/" + filed.tree() + "/place"), coordinator).andExpect(status().isOk());
		assertThat(
				this.jdbc.sql("select count(*) from witness where county = 'hushwitness'").query(Long.class).single())
			.isPositive();
		List<String> found = new ArrayList<>();
		for (RegisterCheck check : this.checks) {
			check.look(new Findings(1000, found::add, (looked) -> {
			}));
		}
		assertThat(found).noneMatch((sentence) -> sentence.contains("hushwitness"));
	}

	@Test
	void exactPlacesAreForTheCountysVerifiersAndWhoOpensThemIsNoted() throws Exception {
		this.trees.county("hushopen", "DCJ");
		TestTrees.Filed filed = this.trees.standing("hushopen", 100, "2020-05-02");
		TestPerson verifier = this.people.verifier("hushopen");
		String place = "/api/v1/trees/" + filed.tree() + "/place";
		this.trees.ask(get(place), verifier)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.latitude").value(40.1))
			.andExpect(jsonPath("$.access").value("public"))
			.andExpect(jsonPath("$.owners").value(0));
		this.mvc.perform(get(place)).andExpect(status().isUnauthorized());
		this.trees.ask(get(place), this.people.volunteer("hushopen")).andExpect(status().isForbidden());
		this.trees.ask(get(place), this.people.verifier("hushnear")).andExpect(status().isForbidden());
		this.trees.ask(get("/api/v1/counties/hushopen/openings"), this.people.coordinator("hushopen"))
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].what").value("place"))
			.andExpect(jsonPath("$.items[0].who").value(verifier.creditName()));
	}

	@Test
	void aFinderIsCreditedByTheNameTheyConsentToAndNeverByAnother() throws Exception {
		this.trees.county("hushcredit", "DCK");
		TestPerson typing = this.people.volunteer("hushcredit");
		String body = """
				{"species": "quercus-alba", "location": {"latitude": 40.1, "longitude": -86.2, "accuracyMetres": 8},
				 "measurement": %s, "filedFor": {"name": "D. Walker", "contact": "the school", "credit": "D. W.",
				 "consentToCredit": %s}}""";
		for (boolean consents : new boolean[] { true, false }) {
			String answer = nominate("hushcredit", body.formatted(TestTrees.measurement(100, "2020-05-02"), consents),
					typing)
				.andExpect(status().isCreated())
				.andReturn()
				.getResponse()
				.getContentAsString();
			assertThat(answer).doesNotContain("Walker", "school");
			this.trees
				.signOff(JsonPath.read(answer, "$.measurement.id"), this.people.verifier("hushcredit"),
						"{\"verdict\": \"confirmed\"}")
				.andExpect(status().isCreated());
			assertThat(read("/api/v1/trees/" + JsonPath.read(answer, "$.tree"), null))
				.doesNotContain("Walker", "school")
				.contains(consents ? "\"foundBy\":\"D. W.\"" : "\"eligible\":true");
			String filedFor = "/api/v1/nominations/" + JsonPath.read(answer, "$.id") + "/filed-for";
			this.trees.ask(get(filedFor), this.people.verifier("hushcredit")).andExpect(status().isForbidden());
			this.trees.ask(get(filedFor), this.people.coordinator("hushcredit"))
				.andExpect(jsonPath("$.name").value("D. Walker"))
				.andExpect(jsonPath("$.contact").value("the school"))
				.andExpect(jsonPath("$.consentsToCredit").value(consents));
		}
		assertThat(read("/api/v1/trees?county=hushcredit", null)).containsOnlyOnce("D. W.");
	}

	private void assertListed(TestTrees.Filed filed, boolean listed) throws Exception {
		this.mvc.perform(get("/api/v1/trees/" + filed.tree()))
			.andExpect(listed ? status().isOk() : status().isNotFound());
		this.mvc.perform(get("/api/v1/trees?county=hushjoint"))
			.andExpect(jsonPath("$.items.length()").value(listed ? 1 : 0));
		this.trees.oaks("hushjoint").andExpect(jsonPath("$.items[0].listed").value(listed));
	}

	private String ownedBySomebody(TestTrees.Filed filed, TestPerson coordinator) throws Exception {
		return JsonPath.read(this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/owners")
				.content("{\"name\": \"C. Landholder\", \"contact\": \"the mill\"}"), coordinator)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
	}

	private void say(String owner, String purposes, @Nullable String until, TestPerson coordinator) throws Exception {
		this.trees
			.ask(post("/api/v1/owners/" + owner + "/consents").content("""
					{"purposes": [%s], "given": true, "how": "letter", "givenOn": "2020-01-01", "until": %s}"""
				.formatted(purposes, (until != null) ? "\"" + until + "\"" : null)), coordinator)
			.andExpect(status().isCreated());
	}

	private ResultActions nominate(String county, String body, TestPerson filer) throws Exception {
		return this.trees.ask(post("/api/v1/counties/" + county + "/nominations").content(body), filer);
	}

	private String tag(TestTrees.Filed filed) throws Exception {
		return JsonPath.read(read("/api/v1/trees/" + filed.tree(), null), "$.tag");
	}

	private String read(String address, @Nullable TestPerson asker) throws Exception {
		return ((asker != null) ? this.trees.ask(get(address), asker) : this.mvc.perform(get(address)))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

}
