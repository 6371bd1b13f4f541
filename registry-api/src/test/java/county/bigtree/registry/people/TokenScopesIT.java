package county.bigtree.registry.people;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;

import county.bigtree.registry.RegistryTest;
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
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class TokenScopesIT {

	private static final String INVITATION = "{\"email\": \"x@example.org\", \"roles\": [{\"county\": \"larkmere\", \"role\": \"volunteer\"}]}";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private MakeToken makeToken;

	@Autowired
	private Actors actors;

	@Autowired
	private Clock clock;

	@Test
	void readsAndNothingMore() throws Exception {
		String token = token(this.people.coordinator("larkmere"), TokenScope.READ);
		send(get("/api/v1/people?county=larkmere"), token, null).andExpect(status().isOk());
		send(post("/api/v1/invitations"), token, INVITATION).andExpect(status().isForbidden())
			.andExpect(jsonPath("$.type").value("/problems/not-allowed"))
			.andExpect(jsonPath("$.detail").value("The scope of this token, read, does not include this."));
		send(post("/api/v1/counties/larkmere/nominations"), token, "{}").andExpect(status().isForbidden());
	}

	@Test
	void filesAsAVolunteerWhateverTheOwnerIs() throws Exception {
		String token = token(this.people.with(CountyRole.of("larkmere", Role.COORDINATOR), CountyRole.administrator()),
				TokenScope.FILE);
		send(get("/api/v1/session"), token, null).andExpect(jsonPath("$.administrator").value(false))
			.andExpect(jsonPath("$.roles[0].role").value("volunteer"));
		send(post("/api/v1/invitations"), token, INVITATION).andExpect(status().isForbidden());
		send(get("/api/v1/sign-ins"), token, null).andExpect(status().isForbidden());
		int filing = send(post("/api/v1/counties/larkmere/nominations"), token, "{}").andReturn()
			.getResponse()
			.getStatus();
		assertThat(filing).isIn(404, 422);
	}

	@Test
	void leavesTheAccountToAWholeToken() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		for (TokenScope scope : new TokenScope[] { TokenScope.READ, TokenScope.FILE }) {
			String token = token(person, scope);
			send(get("/api/v1/tokens"), token, null).andExpect(status().isForbidden());
			send(get("/api/v1/people/me/sign-ins"), token, null).andExpect(status().isForbidden());
			send(put("/api/v1/people/me/password"), token,
					"{\"presentPassword\": \"" + TestPeople.PASSWORD + "\", \"newPassword\": \"nine herons over\"}")
				.andExpect(status().isForbidden());
			send(delete("/api/v1/session?everywhere=true"), token, null).andExpect(status().isForbidden());
		}
		send(get("/api/v1/tokens"), person.token(), null).andExpect(status().isOk());
	}

	@Test
	void tellsOnWhichDayATokenWasLastUsed() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		String today = LocalDate.now(this.clock.withZone(ZoneOffset.UTC)).toString();
		String unused = token(person, TokenScope.READ);
		send(get("/api/v1/tokens"), person.token(), null).andExpect(jsonPath("$.items[0].scope").value("read"))
			.andExpect(jsonPath("$.items[0].lastUsedOn").doesNotExist())
			.andExpect(jsonPath("$.items[1].scope").value("all"))
			.andExpect(jsonPath("$.items[1].lastUsedOn").value(today));
		send(get("/api/v1/session"), unused, null).andExpect(status().isOk());
		send(get("/api/v1/tokens"), person.token(), null).andExpect(jsonPath("$.items[0].lastUsedOn").value(today));
	}

	@Test
	void takesAllOnesTokensBackAtOnce() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		String other = token(person, TokenScope.FILE);
		send(delete("/api/v1/tokens"), person.token(), null).andExpect(status().isNoContent());
		for (String token : new String[] { person.token(), other }) {
			send(get("/api/v1/session"), token, null).andExpect(status().isUnauthorized());
		}
	}

	private String token(TestPerson owner, TokenScope scope) {
		return this.makeToken.make(this.actors.get(owner.id()), "a token", null, scope).secret();
	}

	private ResultActions send(MockHttpServletRequestBuilder request, String token,
			@org.jspecify.annotations.Nullable String body) throws Exception {
		MockHttpServletRequestBuilder sent = request.header(HttpHeaders.AUTHORIZATION, "Bearer " + token);
		return this.mvc.perform((body != null) ? sent.contentType(MediaType.APPLICATION_JSON).content(body) : sent);
	}

}
