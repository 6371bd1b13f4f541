package county.bigtree.registry.security;

import county.bigtree.registry.Problems;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class EndpointAccessIT {

	private static final String TESTS = "/api/v1/convention-tests";

	private static final String VERIFIERS_ONLY = TESTS + "/counties/larkmere/verifiers-only";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void asksForSignInFirst() throws Exception {
		this.mvc.perform(get(VERIFIERS_ONLY))
			.andExpect(status().isUnauthorized())
			.andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
			.andExpect(Problems.problem("""
					{"type": "/problems/sign-in-needed", "title": "Sign in first", "status": 401,
					 "detail": "A valid access token is needed.", "instance": "%s"}""".formatted(VERIFIERS_ONLY)));
	}

	@Test
	void judgesTheRoleInTheCountyOfThePath() throws Exception {
		for (TestPerson person : new TestPerson[] { this.people.volunteer("larkmere"), this.people.verifier("dunmoor"),
				this.people.coordinator("dunmoor"), this.people.administrator(), this.people.with() }) {
			as(person, VERIFIERS_ONLY).andExpect(status().isForbidden()).andExpect(Problems.problem("""
					{"type": "/problems/not-allowed", "title": "Not yours to do", "status": 403,
					 "detail": "Your roles do not include this.", "instance": "%s"}""".formatted(VERIFIERS_ONLY)));
		}
	}

	@Test
	void letsARoleStandForThoseBelowIt() throws Exception {
		as(this.people.verifier("larkmere"), VERIFIERS_ONLY).andExpect(status().isOk());
		as(this.people.coordinator("larkmere"), VERIFIERS_ONLY).andExpect(status().isOk());
	}

	@Test
	void closesAnEndpointThatDeclaresNothing() throws Exception {
		as(this.people.administrator(), TESTS + "/undeclared").andExpect(status().isForbidden());
		this.mvc.perform(get(TESTS + "/undeclared")).andExpect(status().isForbidden());
	}

	@Test
	void tellsSomebodyFromNobodyWhereAnyoneMayAsk() throws Exception {
		as(this.people.with(), TESTS + "/perhaps").andExpect(content().string("somebody"));
		this.mvc.perform(get(TESTS + "/perhaps")).andExpect(content().string("nobody"));
		this.mvc.perform(get(TESTS + "/perhaps").header(HttpHeaders.AUTHORIZATION, "Bearer wrong"))
			.andExpect(status().isUnauthorized());
	}

	private ResultActions as(TestPerson person, String path) throws Exception {
		return this.mvc.perform(get(path).header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

}
