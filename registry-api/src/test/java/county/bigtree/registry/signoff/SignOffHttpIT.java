package county.bigtree.registry.signoff;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.Problems;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
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
 * From the filing to the title and back. 100 in, 80 ft and 40 ft give 190 points (girth +
 * height + a quarter of the spread: common practice, no source).
 */
@RegistryTest
class SignOffHttpIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void makesAChampionOfASignedOffTreeUntilTheSignOffIsRevoked() throws Exception {
		TestTrees.Filed filed = file("signoffton", "SGA");
		TestPerson verifier = this.people.verifier("signoffton");
		String signOff = signOff(filed, verifier, "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees.oaks("signoffton")
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[0].title").value("champion"))
			.andExpect(jsonPath("$.items[0].points").value(190.0));
		String path = "/api/v1/sign-offs/" + JsonPath.<String>read(signOff, "$.id");
		String tag = this.trees.ask(get(path), verifier)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.ETAG);
		assertThat(tag).isNotNull();
		TestPerson coordinator = this.people.coordinator("signoffton");
		String reason = "{\"reason\": \"the tape was wrong\"}";
		this.trees.ask(post(path + "/revocation").content(reason), coordinator)
			.andExpect(status().isPreconditionRequired());
		this.trees.ask(post(path + "/revocation").content(reason).header(HttpHeaders.IF_MATCH, tag), coordinator)
			.andExpect(status().isOk());
		this.trees.oaks("signoffton").andExpect(jsonPath("$.items.length()").value(0));
		this.mvc.perform(get("/api/v1/counties/signoffton/species/quercus-alba/titles"))
			.andExpect(jsonPath("$.items[0].began").value("signed-off"))
			.andExpect(jsonPath("$.items[0].ended").value("revoked"));
	}

	@Test
	void endsTheTitleOfATreeThatFell() throws Exception {
		TestTrees.Filed filed = file("fellton", "SGB");
		signOff(filed, this.people.verifier("fellton"), "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated());
		this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/condition-reports").content("""
					{"condition": "fallen", "observedOn": "2026-06-01", "remarks": "in the storm"}"""),
					this.people.coordinator("fellton"))
			.andExpect(status().isCreated());
		this.trees.oaks("fellton").andExpect(jsonPath("$.items.length()").value(0));
		this.mvc.perform(get("/api/v1/counties/fellton/species/quercus-alba/titles"))
			.andExpect(jsonPath("$.items[0].ended").value("fell"));
	}

	@Test
	void refusesTheNominatorsOwnWord() throws Exception {
		TestTrees.Filed filed = file("ownton", "SGC");
		String path = "/api/v1/measurements/" + filed.measurement() + "/sign-offs";
		this.trees.ask(post(path).content("{\"verdict\": \"confirmed\"}"), filed.filer())
			.andExpect(status().isForbidden())
			.andExpect(Problems.problem("""
					{"type": "/problems/not-allowed", "title": "Not yours to do", "status": 403,
					 "detail": "You can't sign off on a tree that you nominated.", "instance": "%s"}"""
				.formatted(path)));
	}

	@Test
	void refusesASecondWordOfTheSamePerson() throws Exception {
		TestTrees.Filed filed = file("twiceton", "SGD");
		TestPerson verifier = this.people.verifier("twiceton");
		signOff(filed, verifier, "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated());
		signOff(filed, verifier, "{\"verdict\": \"confirmed\"}").andExpect(status().isConflict())
			.andExpect(Problems.problem("""
					{"type": "/problems/conflict", "title": "It does not fit with what is on record", "status": 409,
					 "detail": "You have signed off on this measurement already.",
					 "instance": "/api/v1/measurements/%s/sign-offs"}""".formatted(filed.measurement())));
	}

	/** 110 in lies farther from 100 in than any tolerance for a girth of that size. */
	@Test
	void refusesToConfirmFiguresThatDisagreeAndUsesTheVerifiersInstead() throws Exception {
		TestTrees.Filed filed = file("correctton", "SGE");
		TestPerson verifier = this.people.verifier("correctton");
		String own = "{\"verdict\": \"%s\", \"measurement\": {\"measuredOn\": \"2026-05-20\", "
				+ TestTrees.readings(110) + ", " + TestTrees.CONFIRMED + "}}";
		signOff(filed, verifier, own.formatted("confirmed")).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"));
		this.trees.oaks("correctton").andExpect(jsonPath("$.items.length()").value(0));
		signOff(filed, verifier, own.formatted("corrected")).andExpect(status().isCreated());
		this.trees.oaks("correctton").andExpect(jsonPath("$.items[0].points").value(200.0));
	}

	@Test
	void takesOnTheBooksWhatAVerifierMeasuredThoughTheFiledFiguresWereNotConfirmed() throws Exception {
		TestTrees.Filed filed = file("denyton", "SGG");
		TestPerson verifier = this.people.verifier("denyton");
		signOff(filed, verifier, "{\"verdict\": \"not-confirmed\", \"measurement\": {\"measuredOn\": \"2026-05-20\", "
				+ TestTrees.readings(110) + ", " + TestTrees.CONFIRMED + "}}")
			.andExpect(status().isCreated());
		this.trees.oaks("denyton").andExpect(jsonPath("$.items[0].points").value(200.0));
		this.trees.ask(get("/api/v1/nominations").param("county", "denyton"), verifier)
			.andExpect(jsonPath("$.items[0].status").value("accepted"))
			.andExpect(jsonPath("$.items[0].verifier").value(verifier.id().toString()));
	}

	@Test
	void comparesReadingsWithTheBooksWithoutAnAccount() throws Exception {
		TestTrees.Filed filed = file("measureton", "SGF");
		signOff(filed, this.people.verifier("measureton"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		this.mvc
			.perform(post("/api/v1/measuring/points").contentType(MediaType.APPLICATION_JSON)
				.content("{\"species\": \"quercus-alba\", \"county\": \"measureton\", " + TestTrees.readings(97) + "}"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.reduced.points").value(187.0))
			.andExpect(jsonPath("$.comparison.leaderPoints").value(190.0))
			.andExpect(jsonPath("$.comparison.behind").value(3.0))
			.andExpect(jsonPath("$.comparison.wouldRank").value(2))
			.andExpect(jsonPath("$.comparison.wouldHold").value("co-champion"));
		this.mvc
			.perform(post("/api/v1/measuring/girth").contentType(MediaType.APPLICATION_JSON)
				.content("{\"method\": \"tape\", \"girth\": {\"value\": 10, \"unit\": \"ft\"}}"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.value").value(120.0))
			.andExpect(jsonPath("$.unit").value("in"))
			.andExpect(jsonPath("$.working[0].result").value("120 in"));
	}

	private TestTrees.Filed file(String county, String prefix) throws Exception {
		this.trees.county(county, prefix);
		return this.trees.nominate(county, this.people.verifier(county), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
	}

	private ResultActions signOff(TestTrees.Filed filed, TestPerson signer, String body) throws Exception {
		return this.trees.signOff(filed.measurement(), signer, body);
	}

}
