package county.bigtree.registry.owner;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.ResultActions;

import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Owners, their consents, and for whom a tree was filed, over HTTP.
 */
@RegistryTest
class OwnersHttpIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void aNewOwnerHasConsentedToNothingAndEachConsentHoldsUntilTheNextWord() throws Exception {
		this.trees.county("ownerston", "OWA");
		TestTrees.Filed filed = this.trees.standing("ownerston", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("ownerston");
		String owner = id(add(filed, "{\"name\": \"C. Landholder\", \"contact\": \"by letter\"}", coordinator)
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.consents.length()").value(0)));
		say(owner, "{\"purposes\": [\"visit\", \"listing\"], \"given\": true, \"how\": \"letter\"}", coordinator)
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.consents.length()").value(2))
			.andExpect(jsonPath("$.consents[0].holds").value(true));
		say(owner, "{\"purposes\": [\"visit\"], \"given\": false, \"how\": \"telephone\", \"remarks\": \"a dog\"}",
				coordinator)
			.andExpect(jsonPath("$.consents[0].purpose").value("visit"))
			.andExpect(jsonPath("$.consents[0].holds").value(false))
			.andExpect(jsonPath("$.consents[0].remarks").value("a dog"))
			.andExpect(jsonPath("$.consents[?(@.purpose == 'visit' && @.given == true)].holds").value(false))
			.andExpect(jsonPath("$.consents[?(@.purpose == 'listing')].holds").value(true));
		say(owner,
				"""
						{"purposes": ["place"], "given": true, "how": "form", "givenOn": "2020-01-01", "until": "2020-12-31"}""",
				coordinator)
			.andExpect(jsonPath("$.consents[0].holds").value(false));
	}

	@Test
	void refusesConsentsOfDaysThatCannotBe() throws Exception {
		this.trees.county("ownersday", "OWB");
		TestTrees.Filed filed = this.trees.standing("ownersday", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("ownersday");
		String owner = id(add(filed, "{\"name\": \"C. Landholder\"}", coordinator));
		String said = "{\"purposes\": [\"listing\"], \"given\": %s, \"how\": \"form\", \"givenOn\": \"%s\", \"until\": %s}";
		say(owner, said.formatted("true", "2999-01-01", "null"), coordinator)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/givenOn"));
		say(owner, said.formatted("true", "2020-05-02", "\"2020-05-01\""), coordinator)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/until"));
		say(owner, said.formatted("false", "2020-05-02", "\"2020-05-03\""), coordinator)
			.andExpect(status().isUnprocessableContent());
		say(owner, said.formatted("true", "2020-05-02", "\"2020-05-02\""), coordinator).andExpect(status().isCreated())
			.andExpect(jsonPath("$.consents[0].holds").value(false));
		add(filed, "{\"contact\": \"by letter\"}", coordinator).andExpect(status().isUnprocessableContent());
		add(filed, "{\"person\": \"00000000-0000-7000-8000-000000000009\"}", coordinator)
			.andExpect(jsonPath("$.errors[0].pointer").value("#/person"));
	}

	@Test
	void ownersAreForTheCountysCoordinatorsAndWhoReadThemIsNoted() throws Exception {
		this.trees.county("ownersdesk", "OWC");
		this.trees.county("ownersfar", "OWD");
		TestTrees.Filed filed = this.trees.standing("ownersdesk", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("ownersdesk");
		TestPerson elsewhere = this.people.coordinator("ownersfar");
		String owner = id(add(filed, "{\"name\": \"C. Landholder\"}", coordinator));
		String owners = "/api/v1/trees/" + filed.tree() + "/owners";
		this.trees.ask(get(owners), this.people.verifier("ownersdesk")).andExpect(status().isForbidden());
		this.trees.ask(get(owners), elsewhere).andExpect(status().isForbidden());
		this.trees.ask(get("/api/v1/owners/" + owner), elsewhere).andExpect(status().isNotFound());
		this.trees.ask(get(owners), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items[0].name").value("C. Landholder"));
		this.trees.ask(get("/api/v1/counties/ownersdesk/openings"), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].what").value("owners"))
			.andExpect(jsonPath("$.items[0].person").value(coordinator.id().toString()))
			.andExpect(jsonPath("$.items[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[0].subject").value(nullValue()))
			.andExpect(jsonPath("$.items[1].subject").value(owner));
		this.trees.ask(get("/api/v1/counties/ownersdesk/openings"), elsewhere).andExpect(status().isForbidden());
	}

	@Test
	void theOwnerOfANominationIsAnOwnerWithWhatTheySaidToTheFiler() throws Exception {
		this.trees.county("ownersform", "OWE");
		TestPerson coordinator = this.people.coordinator("ownersform");
		String tree = tree(nominate("ownersform", this.people.volunteer("ownersform"),
				"\"owner\": {\"name\": \"C. Landholder\", \"contact\": \"the mill\", \"consentToVisit\": true, \"consentToPublish\": false}"));
		this.trees.ask(get("/api/v1/trees/" + tree + "/owners"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].name").value("C. Landholder"))
			.andExpect(jsonPath("$.items[0].contact").value("the mill"))
			.andExpect(jsonPath("$.items[0].consents.length()").value(3))
			.andExpect(jsonPath("$.items[0].consents[?(@.holds == true)].purpose").value("visit"));
		String nobodys = tree(nominate("ownersform", this.people.volunteer("ownersform"), "\"owner\": {}"));
		this.trees.ask(get("/api/v1/trees/" + nobodys + "/owners"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void nobodySignsOffOnATreeThatTheyOwnUntilTheyOwnItNoMore() throws Exception {
		this.trees.county("ownersjudge", "OWF");
		TestPerson coordinator = this.people.coordinator("ownersjudge");
		TestPerson owning = this.people.verifier("ownersjudge");
		TestTrees.Filed filed = this.trees.nominate("ownersjudge", this.people.volunteer("ownersjudge"), "quercus-alba",
				TestTrees.measurement(100, "2020-05-02"));
		String owner = id(add(filed, "{\"person\": \"%s\"}".formatted(owning.id()), coordinator));
		this.trees.signOff(filed.measurement(), owning, "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isForbidden())
			.andExpect(jsonPath("$.detail").value("You can't sign off on a tree that you own."));
		this.trees.ask(post("/api/v1/owners/" + owner + "/end").content("{\"reason\": \"sold\"}"), coordinator)
			.andExpect(status().isOk());
		this.trees.ask(post("/api/v1/owners/" + owner + "/end").content("{\"reason\": \"sold\"}"), coordinator)
			.andExpect(status().isConflict());
		this.trees.signOff(filed.measurement(), owning, "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated());
	}

	@Test
	void anOwnerByTheNameThatAVerifierIsCreditedUnderIsTakenForThem() throws Exception {
		this.trees.county("ownersname", "OWG");
		TestPerson owning = this.people.verifier("ownersname");
		TestTrees.Filed filed = this.trees.nominate("ownersname", this.people.volunteer("ownersname"), "quercus-alba",
				TestTrees.measurement(100, "2020-05-02"));
		add(filed, "{\"name\": \"%s\"}".formatted(owning.creditName().toUpperCase(java.util.Locale.ROOT)),
				this.people.coordinator("ownersname"));
		this.trees.signOff(filed.measurement(), owning, "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isForbidden());
	}

	@Test
	void whoTypedForSomebodyMaySignOffAndWhoFoundItMayNot() throws Exception {
		this.trees.county("filedforton", "OWH");
		TestPerson typing = this.people.verifier("filedforton");
		TestPerson finder = this.people.verifier("filedforton");
		String measurement = JsonPath.read(
				nominate("filedforton", typing,
						"\"filedFor\": {\"person\": \"%s\", \"contact\": \"the mill\"}".formatted(finder.id())),
				"$.measurement.id");
		this.trees.signOff(measurement, finder, "{\"verdict\": \"confirmed\"}").andExpect(status().isForbidden());
		this.trees.signOff(measurement, typing, "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated());
		String named = JsonPath.read(
				nominate("filedforton", typing, "\"filedFor\": {\"name\": \"%s\"}".formatted(finder.creditName())),
				"$.measurement.id");
		this.trees.signOff(named, finder, "{\"verdict\": \"confirmed\"}").andExpect(status().isForbidden());
		nominateAnyhow("filedforton", typing, "\"filedFor\": {\"contact\": \"the mill\"}")
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/filedFor/name"));
	}

	private ResultActions add(TestTrees.Filed filed, String body, TestPerson person) throws Exception {
		return this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/owners").content(body), person);
	}

	private ResultActions say(String owner, String body, TestPerson person) throws Exception {
		return this.trees.ask(post("/api/v1/owners/" + owner + "/consents").content(body), person);
	}

	private String nominate(String county, TestPerson filer, String more) throws Exception {
		return nominateAnyhow(county, filer, more).andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

	private ResultActions nominateAnyhow(String county, TestPerson filer, String more) throws Exception {
		return this.trees.ask(post("/api/v1/counties/" + county + "/nominations").content("""
				{"species": "quercus-alba", "location": {"latitude": 40.1, "longitude": -86.2, "accuracyMetres": 8},
				 "measurement": %s, %s}""".formatted(TestTrees.measurement(100, "2020-05-02"), more)), filer);
	}

	private static String tree(String nomination) {
		return JsonPath.read(nomination, "$.tree");
	}

	private static String id(ResultActions answer) throws Exception {
		return JsonPath.read(answer.andReturn().getResponse().getContentAsString(), "$.id");
	}

}
