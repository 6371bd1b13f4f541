package county.bigtree.registry.signoff;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.json.JsonCompareMode;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * From the filing to the title and back. 100 in, 80 ft and 40 ft give 190 points (girth +
 * height + a quarter of the spread: common practice, no source).
 */
@RegistryTest
class SignOffHttpIT {

	private static final String READINGS = """
			"girth": {"method": "tape", "girth": {"value": %s, "unit": "in"}},
			"height": {"method": "pole", "height": {"value": 80, "unit": "ft"}},
			"crown": {"method": "axes", "axes": [{"value": 40, "unit": "ft"}, {"value": 40, "unit": "ft"}]}""";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void makesAChampionOfASignedOffTreeUntilTheSignOffIsRevoked() throws Exception {
		Filed filed = file("signoffton", "SGA");
		TestPerson verifier = this.people.verifier("signoffton");
		String signOff = signOff(filed, verifier, "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		standing("signoffton").andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[0].title").value("champion"))
			.andExpect(jsonPath("$.items[0].points").value(190.0));
		String path = "/api/v1/sign-offs/" + JsonPath.<String>read(signOff, "$.id");
		String tag = ask(get(path), verifier).andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.ETAG);
		assertThat(tag).isNotNull();
		TestPerson coordinator = this.people.coordinator("signoffton");
		String reason = "{\"reason\": \"the tape was wrong\"}";
		ask(post(path + "/revocation").content(reason), coordinator).andExpect(status().isPreconditionRequired());
		ask(post(path + "/revocation").content(reason).header(HttpHeaders.IF_MATCH, tag), coordinator)
			.andExpect(status().isOk());
		standing("signoffton").andExpect(jsonPath("$.items.length()").value(0));
		this.mvc.perform(get("/api/v1/counties/signoffton/species/quercus-alba/titles"))
			.andExpect(jsonPath("$.items[0].began").value("signed-off"))
			.andExpect(jsonPath("$.items[0].ended").value("revoked"));
	}

	@Test
	void endsTheTitleOfATreeThatFell() throws Exception {
		Filed filed = file("fellton", "SGB");
		signOff(filed, this.people.verifier("fellton"), "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated());
		ask(post("/api/v1/trees/" + filed.tree() + "/condition-reports").content("""
				{"condition": "fallen", "observedOn": "2026-06-01", "remarks": "in the storm"}"""),
				this.people.coordinator("fellton"))
			.andExpect(status().isCreated());
		standing("fellton").andExpect(jsonPath("$.items.length()").value(0));
		this.mvc.perform(get("/api/v1/counties/fellton/species/quercus-alba/titles"))
			.andExpect(jsonPath("$.items[0].ended").value("fell"));
	}

	@Test
	void refusesTheNominatorsOwnWord() throws Exception {
		Filed filed = file("ownton", "SGC");
		String path = "/api/v1/measurements/" + filed.measurement() + "/sign-offs";
		ask(post(path).content("{\"verdict\": \"confirmed\"}"), filed.filer()).andExpect(status().isForbidden())
			.andExpect(content().json("""
					{"type": "/problems/not-allowed", "title": "Not yours to do", "status": 403,
					 "detail": "You can't sign off on a tree that you nominated.", "instance": "%s"}""".formatted(path),
					JsonCompareMode.STRICT));
	}

	@Test
	void refusesASecondWordOfTheSamePerson() throws Exception {
		Filed filed = file("twiceton", "SGD");
		TestPerson verifier = this.people.verifier("twiceton");
		signOff(filed, verifier, "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated());
		signOff(filed, verifier, "{\"verdict\": \"confirmed\"}").andExpect(status().isConflict())
			.andExpect(content().json("""
					{"type": "/problems/conflict", "title": "It does not fit with what is on record", "status": 409,
					 "detail": "You have signed off on this measurement already.",
					 "instance": "/api/v1/measurements/%s/sign-offs"}""".formatted(filed.measurement()),
					JsonCompareMode.STRICT));
	}

	/** 110 in lies farther from 100 in than any tolerance for a girth of that size. */
	@Test
	void refusesToConfirmFiguresThatDisagreeAndUsesTheVerifiersInstead() throws Exception {
		Filed filed = file("correctton", "SGE");
		TestPerson verifier = this.people.verifier("correctton");
		String own = "{\"verdict\": \"%s\", \"measurement\": {\"measuredOn\": \"2026-05-20\", "
				+ READINGS.formatted("110") + "}}";
		signOff(filed, verifier, own.formatted("confirmed")).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"));
		standing("correctton").andExpect(jsonPath("$.items.length()").value(0));
		signOff(filed, verifier, own.formatted("corrected")).andExpect(status().isCreated());
		standing("correctton").andExpect(jsonPath("$.items[0].points").value(200.0));
	}

	@Test
	void takesOnTheBooksWhatAVerifierMeasuredThoughTheFiledFiguresWereNotConfirmed() throws Exception {
		Filed filed = file("denyton", "SGG");
		TestPerson verifier = this.people.verifier("denyton");
		signOff(filed, verifier, "{\"verdict\": \"not-confirmed\", \"measurement\": {\"measuredOn\": \"2026-05-20\", "
				+ READINGS.formatted("110") + "}}")
			.andExpect(status().isCreated());
		standing("denyton").andExpect(jsonPath("$.items[0].points").value(200.0));
		ask(get("/api/v1/nominations").param("county", "denyton"), verifier)
			.andExpect(jsonPath("$.items[0].status").value("accepted"))
			.andExpect(jsonPath("$.items[0].verifier").value(verifier.id().toString()));
	}

	@Test
	void comparesReadingsWithTheBooksWithoutAnAccount() throws Exception {
		Filed filed = file("measureton", "SGF");
		signOff(filed, this.people.verifier("measureton"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		this.mvc
			.perform(post("/api/v1/measuring/points").contentType(MediaType.APPLICATION_JSON)
				.content("{\"species\": \"quercus-alba\", \"county\": \"measureton\", " + READINGS.formatted("97")
						+ "}"))
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

	private Filed file(String county, String prefix) throws Exception {
		ask(post("/api/v1/counties").content("""
				{"key": "%s", "name": "%s", "state": "Nowhere", "timeZone": "America/New_York", "tagPrefix": "%s"}"""
			.formatted(county, county, prefix)), this.people.administrator()).andExpect(status().isCreated());
		TestPerson filer = this.people.with(CountyRole.of(county, Role.VERIFIER));
		String body = "{\"species\": \"quercus-alba\", \"location\": {\"latitude\": 40.1, \"longitude\": -86.2, "
				+ "\"accuracyMetres\": 8}, \"access\": \"public\", \"measurement\": {\"measuredOn\": \"2026-05-02\", "
				+ "\"measuredBy\": [\"A. Finder\"], " + READINGS.formatted("100") + "}}";
		String answer = ask(post("/api/v1/counties/" + county + "/nominations").content(body), filer)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		return new Filed(filer, JsonPath.read(answer, "$.tree"), JsonPath.read(answer, "$.measurement.id"));
	}

	private ResultActions signOff(Filed filed, TestPerson signer, String body) throws Exception {
		return ask(post("/api/v1/measurements/" + filed.measurement() + "/sign-offs").content(body), signer);
	}

	private ResultActions standing(String county) throws Exception {
		return this.mvc.perform(get("/api/v1/counties/" + county + "/species/quercus-alba/standing"))
			.andExpect(status().isOk());
	}

	private ResultActions ask(MockHttpServletRequestBuilder request, TestPerson person) throws Exception {
		return this.mvc.perform(request.contentType(MediaType.APPLICATION_JSON)
			.header("Idempotency-Key", java.util.UUID.randomUUID().toString())
			.header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

	/** A tree just nominated. */
	private record Filed(TestPerson filer, String tree, String measurement) {
	}

}
