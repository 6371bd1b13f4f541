package county.bigtree.registry.http;

import county.bigtree.registry.Problems;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class ProblemsIT {

	private static final String THINGS = "/api/v1/convention-tests/things";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void answersUnreadableJsonWithItsPlace() throws Exception {
		problem(send("{\"name\": "), 400, """
				{"type": "/problems/unreadable", "title": "The request can't be read", "status": 400,
				 "detail": "This is not well-formed JSON (line 1, column 10).", "instance": "%s"}""".formatted(THINGS));
	}

	@Test
	void refusesRepeatedNames() throws Exception {
		problem(send("{\"name\": \"a\", \"name\": \"b\", \"kind\": \"plain\"}"), 400, """
				{"type": "/problems/unreadable", "title": "The request can't be read", "status": 400,
				 "detail": "This is not well-formed JSON (line 1, column 21).", "instance": "%s"}""".formatted(THINGS));
	}

	@Test
	void asksForABodyWhereThereIsNone() throws Exception {
		problem(send(""), 400, """
				{"type": "/problems/unreadable", "title": "The request can't be read", "status": 400,
				 "detail": "A JSON body is needed.", "instance": "%s"}""".formatted(THINGS));
	}

	@Test
	void namesAnUnknownField() throws Exception {
		invalid(send("{\"name\": \"a\", \"kind\": \"plain\", \"colour/shade\": 1}"), "#/colour~1shade", "unknown-field",
				"is not known here; known are kind, name, size");
	}

	@Test
	void namesAFieldOfTheWrongType() throws Exception {
		invalid(send("{\"name\": \"a\", \"kind\": \"plain\", \"size\": \"3\"}"), "#/size", "wrong-type",
				"must be a number");
		invalid(send("{\"name\": {}, \"kind\": \"plain\"}"), "#/name", "wrong-type", "must be a text");
	}

	@Test
	void namesTheConstantsThereAre() throws Exception {
		invalid(send("{\"name\": \"a\", \"kind\": \"PLAIN\"}"), "#/kind", "wrong-type",
				"must be one of plain, refused, broken-off, sent-back, contended, always-contended, twice, slow");
	}

	@Test
	void namesEveryConstraintBroken() throws Exception {
		problem(send("{\"name\": \" \", \"kind\": null, \"size\": 11}"), 422, """
				{"type": "/problems/invalid", "title": "Something in the request can't be taken", "status": 422,
				 "detail": "3 entries can't be taken.", "instance": "%s", "errors": [
				  {"pointer": "#/kind", "code": "missing", "detail": "must not be null"},
				  {"pointer": "#/name", "code": "missing", "detail": "must not be blank"},
				  {"pointer": "#/size", "code": "out-of-range", "detail": "must be less than or equal to 10"}]}"""
			.formatted(THINGS));
	}

	@Test
	void namesEveryEntryOfAReadingAtItsPlaceInTheWhole() throws Exception {
		ResultActions answer = this.mvc
			.perform(post("/api/v1/convention-tests/readings").contentType(MediaType.APPLICATION_JSON).content("""
					{"measurement": {"girth": {"method": "string", "length": {"value": "100", "unit": "rod"}}}}"""));
		problem(answer, 422, """
				{"type": "/problems/invalid", "title": "Something in the request can't be taken", "status": 422,
				 "detail": "2 entries can't be taken.", "instance": "/api/v1/convention-tests/readings", "errors": [
				  {"pointer": "#/measurement/girth/length/value", "code": "wrong-type", "detail": "must be a number"},
				  {"pointer": "#/measurement/girth/length/unit", "code": "unknown-unit",
				   "detail": "must be one of in, ft, yd, mm, cm, m"}]}""");
	}

	@Test
	void givesReadingsBackAsEntered() throws Exception {
		String body = """
				{"measurement":{"girth":{"method":"tape","girth":{"feet":12,"inches":3.5}}}}""";
		this.mvc
			.perform(post("/api/v1/convention-tests/readings").contentType(MediaType.APPLICATION_JSON).content(body))
			.andExpect(status().isOk())
			.andExpect(content().string(body));
	}

	@Test
	void refusesUnknownQueryParameters() throws Exception {
		problem(this.mvc.perform(get("/api/v1/convention-tests/numbers?upto=3")), 400, """
				{"type": "/problems/invalid-parameter", "title": "A parameter is wrong", "status": 400,
				 "detail": "The parameter 'upto' is not known here; known are cursor, limit, upTo.",
				 "instance": "/api/v1/convention-tests/numbers", "parameter": "upto"}""");
	}

	@Test
	void refusesParametersOfTheWrongForm() throws Exception {
		problem(this.mvc.perform(get("/api/v1/convention-tests/numbers?upTo=many")), 400, """
				{"type": "/problems/invalid-parameter", "title": "A parameter is wrong", "status": 400,
				 "detail": "The parameter 'upTo' is missing or can't be taken.",
				 "instance": "/api/v1/convention-tests/numbers", "parameter": "upTo"}""");
	}

	@Test
	void refusesLimitsOutOfRange() throws Exception {
		for (String limit : new String[] { "0", "501", "-1", "x", "99999999999" }) {
			problem(this.mvc.perform(get("/api/v1/convention-tests/numbers").queryParam("limit", limit)), 400, """
					{"type": "/problems/invalid-parameter", "title": "A parameter is wrong", "status": 400,
					 "detail": "The limit must be a whole number from 1 to 500.",
					 "instance": "/api/v1/convention-tests/numbers", "parameter": "limit"}""");
		}
	}

	@Test
	void findsNothingAtUnknownAddresses() throws Exception {
		for (String path : new String[] { "/api/v1/nowhere", "/nowhere", "/api/v1/convention-tests/identified/7" }) {
			problem(this.mvc.perform(get(path)), 404, """
					{"type": "/problems/not-found", "title": "Nothing here", "status": 404,
					 "detail": "There is nothing at this address.", "instance": "%s"}""".formatted(path));
		}
	}

	@Test
	void listsTheMethodsTaken() throws Exception {
		problem(this.mvc.perform(delete(THINGS)).andExpect(header().string(HttpHeaders.ALLOW, "POST")), 405, """
				{"type": "/problems/method-not-allowed", "title": "This can't be done here", "status": 405,
				 "detail": "This method is not taken here.", "instance": "%s"}""".formatted(THINGS));
	}

	@Test
	void takesNothingButFormsOutsideTheApi() throws Exception {
		problem(this.mvc.perform(post("/problems")).andExpect(header().string(HttpHeaders.ALLOW, "GET")), 405, """
				{"type": "/problems/method-not-allowed", "title": "This can't be done here", "status": 405,
				 "detail": "This method is not taken here.", "instance": "/problems"}""");
		problem(this.mvc.perform(put("/problems")).andExpect(header().string(HttpHeaders.ALLOW, "GET, HEAD, POST")),
				405, """
						{"type": "/problems/method-not-allowed", "title": "This can't be done here", "status": 405,
						 "detail": "This method is not taken here.", "instance": "/problems"}""");
	}

	@Test
	void saysWhenItCantAnswerInTheFormAskedFor() throws Exception {
		problem(this.mvc.perform(get(THINGS + "/oak").accept(MediaType.APPLICATION_PDF)), 406, """
				{"type": "/problems/not-acceptable", "title": "No answer in the form asked for", "status": 406,
				 "detail": "None of the media types in the Accept header can be given.", "instance": "%s/oak"}"""
			.formatted(THINGS));
	}

	@Test
	void saysWhichFormItTakes() throws Exception {
		problem(this.mvc.perform(asSomebody(post(THINGS)).contentType(MediaType.TEXT_PLAIN).content("oak")), 415, """
				{"type": "/problems/unsupported-media-type", "title": "Not in a form taken here", "status": 415,
				 "detail": "The Content-Type is not one that is taken here.", "instance": "%s"}""".formatted(THINGS));
	}

	@Test
	void refusesBodiesThatAreTooLarge() throws Exception {
		problem(send("\"" + "x".repeat(1 << 20) + "\""), 413, """
				{"type": "/problems/too-large", "title": "Too large", "status": 413,
				 "detail": "At most 1048576 bytes are taken in one request.", "instance": "%s"}""".formatted(THINGS));
	}

	@Test
	void letsNothingOfTheServerOutWhenItBreaks() throws Exception {
		String body = problem(send("{\"name\": \"a\", \"kind\": \"broken-off\"}"), 500)
			.andExpect(jsonPath("$.type").value("/problems/unexpected"))
			.andExpect(jsonPath("$.detail").value("Something went wrong on our side. Nothing was recorded."))
			.andExpect(jsonPath("$.request").isString())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(body).doesNotContainIgnoringCase("exception").doesNotContain("select", "county.bigtree", "at ");
	}

	@Test
	void answersAConstraintOfTheDatabaseWithConflict() throws Exception {
		this.people.volunteer("larkmere");
		problem(send("{\"name\": \"a\", \"kind\": \"twice\"}"), 409, """
				{"type": "/problems/conflict", "title": "It does not fit with what is on record", "status": 409,
				 "detail": "This contradicts what is already on record.", "instance": "%s"}""".formatted(THINGS));
	}

	@Test
	void explainsEachTypeOnItsPage() throws Exception {
		this.mvc.perform(get("/problems/stale"))
			.andExpect(status().isOk())
			.andExpect(content().contentTypeCompatibleWith(MediaType.TEXT_HTML))
			.andExpect(content().string(org.hamcrest.Matchers.containsString("What you decided on has changed")));
		this.mvc.perform(get("/problems")).andExpect(status().isOk());
		this.mvc.perform(get("/problems/unheard-of")).andExpect(status().isNotFound());
	}

	private ResultActions send(String body) throws Exception {
		return this.mvc.perform(asSomebody(post(THINGS)).contentType(MediaType.APPLICATION_JSON).content(body));
	}

	private MockHttpServletRequestBuilder asSomebody(MockHttpServletRequestBuilder request) {
		return request.header(HttpHeaders.AUTHORIZATION, this.people.with().bearer());
	}

	private static void invalid(ResultActions answer, String pointer, String code, String detail) throws Exception {
		problem(answer, 422, """
				{"type": "/problems/invalid", "title": "Something in the request can't be taken", "status": 422,
				 "detail": "One entry can't be taken.", "instance": "%s",
				 "errors": [{"pointer": "%s", "code": "%s", "detail": "%s"}]}""".formatted(THINGS, pointer, code,
				detail));
	}

	private static void problem(ResultActions answer, int status, String body) throws Exception {
		problem(answer, status).andExpect(Problems.problem(body));
	}

	private static ResultActions problem(ResultActions answer, int status) throws Exception {
		return answer.andExpect(status().is(status))
			.andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
			.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "private, no-store"));
	}

}
