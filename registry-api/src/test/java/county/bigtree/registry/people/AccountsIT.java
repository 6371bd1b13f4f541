package county.bigtree.registry.people;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.Problems;
import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.env.MockEnvironment;
import org.springframework.test.json.JsonCompareMode;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
@ExtendWith(OutputCaptureExtension.class)
class AccountsIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private Clock clock;

	@Autowired
	private InvitePerson invitePerson;

	@Test
	void sessionShowsTheHighestRoleInEachCounty() throws Exception {
		TestPerson person = this.people.with(CountyRole.of("larkmere", Role.VERIFIER),
				CountyRole.of("larkmere", Role.VOLUNTEER), CountyRole.of("dunmoor", Role.COORDINATOR));
		this.mvc.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION, person.bearer()))
			.andExpect(status().isOk())
			.andExpect(content()
				.json("""
						{"person": "%s", "creditName": "%s", "administrator": false,
						 "roles": [{"county": "dunmoor", "role": "coordinator"}, {"county": "larkmere", "role": "verifier"}],
						 "csrfToken": null}"""
					.formatted(person.id(), person.creditName()), JsonCompareMode.STRICT));
	}

	@Test
	void makesATokenForThePassword() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		LocalDate today = LocalDate.now(this.clock.withZone(ZoneOffset.UTC));
		String made = token(person.email(), TestPeople.PASSWORD,
				"{\"name\": \"my phone\", \"expiresOn\": \"" + today + "\"}")
			.andExpect(status().isCreated())
			.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "private, no-store"))
			.andExpect(jsonPath("$.name").value("my phone"))
			.andExpect(jsonPath("$.expiresOn").value(today.toString()))
			.andReturn()
			.getResponse()
			.getContentAsString();
		String token = JsonPath.read(made, "$.token");
		assertThat(token).matches("bigtree_[A-Za-z0-9_-]{43}").endsWith(JsonPath.read(made, "$.last4"));
		this.mvc.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION, "Bearer " + token))
			.andExpect(jsonPath("$.person").value(person.id().toString()));
		this.mvc.perform(get("/api/v1/tokens").header(HttpHeaders.AUTHORIZATION, "Bearer " + token))
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].name").value("my phone"))
			.andExpect(jsonPath("$.items[0].token").doesNotExist());
	}

	@Test
	void keepsNoTokenAndNoPasswordInTheClear() {
		TestPerson person = this.people.volunteer("larkmere");
		String rows = this.jdbc.sql("""
				select (select p::text from person p where id = :id) ||
					(select string_agg(t::text, ' ') from access_token t where person = :id)""")
			.param("id", person.id())
			.query(String.class)
			.single();
		assertThat(rows).contains("$argon2id$v=19$m=19456,t=2,p=1$")
			.doesNotContain(TestPeople.PASSWORD, person.token(), person.token().substring(10));
	}

	@Test
	void saysTheSameForAWrongPasswordAndAnUnknownAddress() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		for (String email : new String[] { person.email(), "nobody@example.org", "" }) {
			token(email, "not the password", "{\"name\": \"x\"}").andExpect(status().isUnauthorized())
				.andExpect(header().string(HttpHeaders.WWW_AUTHENTICATE, "Basic realm=\"registry\", charset=\"UTF-8\""))
				.andExpect(content().contentType(MediaType.APPLICATION_PROBLEM_JSON))
				.andExpect(Problems.problem("""
						{"type": "/problems/sign-in-failed", "title": "Sign-in failed", "status": 401,
						 "detail": "The e-mail address and password do not fit.", "instance": "/api/v1/tokens"}"""));
		}
	}

	@Test
	void makesNoTokenForATokenNorForNobody() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		for (String authorization : new String[] { person.bearer(), "Basic !!!" }) {
			this.mvc
				.perform(post("/api/v1/tokens").header(HttpHeaders.AUTHORIZATION, authorization)
					.contentType(MediaType.APPLICATION_JSON)
					.content("{\"name\": \"x\"}"))
				.andExpect(status().isUnauthorized())
				.andExpect(jsonPath("$.type").value("/problems/sign-in-failed"));
		}
		this.mvc.perform(post("/api/v1/tokens").contentType(MediaType.APPLICATION_JSON).content("{\"name\": \"x\"}"))
			.andExpect(status().isUnauthorized());
	}

	@Test
	void takesThePasswordNowhereElse() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		this.mvc
			.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION,
					basic(person.email(), TestPeople.PASSWORD)))
			.andExpect(status().isUnauthorized())
			.andExpect(jsonPath("$.type").value("/problems/sign-in-needed"));
	}

	@Test
	void refusesATokenThatEndedBeforeToday() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		LocalDate today = LocalDate.now(this.clock.withZone(ZoneOffset.UTC));
		token(person.email(), TestPeople.PASSWORD, "{\"name\": \"x\", \"expiresOn\": \"" + today.minusDays(1) + "\"}")
			.andExpect(status().is(422))
			.andExpect(Problems.problem("""
					{"type": "/problems/invalid", "title": "Something in the request can't be taken", "status": 422,
					 "detail": "One entry can't be taken.", "instance": "/api/v1/tokens", "errors": [
					  {"pointer": "#/expiresOn", "code": "out-of-range",
					   "detail": "must not be before today, which is %s"}]}""".formatted(today)));
	}

	@Test
	void heedsNoTokenThatExpiredWasTakenBackOrBelongsToAClosedAccount() throws Exception {
		String expired = expiredToken(this.people.volunteer("larkmere"));
		TestPerson closed = this.people.volunteer("larkmere");
		this.jdbc.sql("update person set active = false where id = ?").param(closed.id()).update();
		TestPerson revoked = this.people.volunteer("larkmere");
		this.mvc
			.perform(delete("/api/v1/tokens/" + tokenId(revoked)).header(HttpHeaders.AUTHORIZATION, revoked.bearer()))
			.andExpect(status().isNoContent());
		for (String token : new String[] { expired, closed.token(), revoked.token(), "bigtree_x", "" }) {
			this.mvc.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION, "Bearer " + token))
				.andExpect(status().isUnauthorized())
				.andExpect(header().string(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"registry\""))
				.andExpect(Problems.problem("""
						{"type": "/problems/sign-in-needed", "title": "Sign in first", "status": 401,
						 "detail": "A valid access token is needed.", "instance": "/api/v1/session"}"""));
		}
	}

	@Test
	void takesBackOnlyOnesOwnTokens() throws Exception {
		TestPerson owner = this.people.volunteer("larkmere");
		TestPerson other = this.people.administrator();
		this.mvc.perform(delete("/api/v1/tokens/" + tokenId(owner)).header(HttpHeaders.AUTHORIZATION, other.bearer()))
			.andExpect(status().isNotFound());
		this.mvc.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION, owner.bearer()))
			.andExpect(status().isOk());
	}

	@Test
	void letsInWhomACoordinatorInvites() throws Exception {
		TestPerson coordinator = this.people.coordinator("larkmere");
		String email = UUID.randomUUID() + "@example.org";
		String secret = invite(coordinator, email, "larkmere", "verifier");
		String accepted = accept(secret, "twelve letters", "\"New Verifier\"").andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		String made = token(email.toUpperCase(java.util.Locale.ROOT), "twelve letters", "{\"name\": \"first\"}")
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.mvc
			.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION,
					"Bearer " + JsonPath.<String>read(made, "$.token")))
			.andExpect(content().json("""
					{"person": "%s", "creditName": "New Verifier", "administrator": false,
					 "roles": [{"county": "larkmere", "role": "verifier"}], "csrfToken": null}"""
				.formatted(JsonPath.<String>read(accepted, "$.person")), JsonCompareMode.STRICT));
	}

	@Test
	void acceptsAnInvitationOnce() throws Exception {
		String secret = invite(this.people.coordinator("larkmere"), UUID.randomUUID() + "@example.org", "larkmere",
				"volunteer");
		accept(secret, "twelve letters", "\"First\"").andExpect(status().isCreated());
		accept(secret, "twelve letters", "\"Second\"").andExpect(status().is(422)).andExpect(Problems.problem("""
				{"type": "/problems/refused", "title": "The rules don't allow it", "status": 422,
				 "detail": "This invitation is not known, was used already, or is too old. Ask for a new one.",
				 "instance": "/api/v1/invitations/acceptance"}"""));
	}

	@Test
	void addsRolesToAnAccountOnlyForItsPassword() throws Exception {
		TestPerson known = this.people.volunteer("larkmere");
		String secret = invite(this.people.coordinator("dunmoor"), known.email(), "dunmoor", "volunteer");
		accept(secret, "some other password", "null").andExpect(status().is(422))
			.andExpect(jsonPath("$.type").value("/problems/refused"));
		accept(secret, TestPeople.PASSWORD, "null").andExpect(status().isCreated())
			.andExpect(jsonPath("$.person").value(known.id().toString()));
		this.mvc.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION, known.bearer()))
			.andExpect(jsonPath("$.roles[0].county").value("dunmoor"))
			.andExpect(jsonPath("$.roles[1].county").value("larkmere"));
	}

	@Test
	void asksForAPasswordOfTwelveCharactersAndAName() throws Exception {
		String secret = invite(this.people.coordinator("larkmere"), UUID.randomUUID() + "@example.org", "larkmere",
				"volunteer");
		accept(secret, "eleven char", "\"N\"").andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/password"))
			.andExpect(jsonPath("$.errors[0].detail").value("must have from 12 to 128 characters but has 11"));
		accept(secret, "x".repeat(129), "\"N\"").andExpect(jsonPath("$.errors[0].code").value("wrong-length"));
		accept(secret, "twelve chars", "null").andExpect(jsonPath("$.errors[0].pointer").value("#/creditName"));
		accept(secret, "twelve chars", "\"N\"").andExpect(status().isCreated());
	}

	@Test
	void letsNobodyGiveRolesBeyondTheirOwnCounty() throws Exception {
		TestPerson coordinator = this.people.coordinator("larkmere");
		for (String role : new String[] { "{\"county\": \"dunmoor\", \"role\": \"volunteer\"}",
				"{\"role\": \"administrator\"}" }) {
			inviting(coordinator, "x@example.org", role).andExpect(status().isForbidden())
				.andExpect(jsonPath("$.type").value("/problems/not-allowed"));
		}
		inviting(this.people.verifier("larkmere"), "x@example.org",
				"{\"county\": \"larkmere\", \"role\": \"volunteer\"}")
			.andExpect(status().isForbidden());
		inviting(this.people.administrator(), "x@example.org", "{\"role\": \"administrator\"}")
			.andExpect(status().isCreated());
	}

	@Test
	void refusesRolesThatCantBe() throws Exception {
		TestPerson administrator = this.people.administrator();
		inviting(administrator, "x@example.org", "{\"county\": \"larkmere\", \"role\": \"administrator\"}")
			.andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/roles/0/county"));
		inviting(administrator, "not an address", "{\"county\": \"larkmere\", \"role\": \"king\"}")
			.andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/roles/0/role"))
			.andExpect(jsonPath("$.errors[0].detail")
				.value("must be one of volunteer, verifier, coordinator, administrator"));
		inviting(administrator, "not an address", "{\"county\": \"larkmere\", \"role\": \"volunteer\"}")
			.andExpect(jsonPath("$.errors[0].pointer").value("#/email"));
	}

	@Test
	void listsThePeopleOfACountyPageByPage() throws Exception {
		String county = "county-" + UUID.randomUUID();
		TestPerson coordinator = this.people.coordinator(county);
		TestPerson volunteer = this.people.with(CountyRole.of(county, Role.VOLUNTEER),
				CountyRole.of("elsewhere", Role.VERIFIER));
		String first = this.mvc
			.perform(get("/api/v1/people?limit=1&county=" + county).header(HttpHeaders.AUTHORIZATION,
					coordinator.bearer()))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items[0].id").value(coordinator.id().toString()))
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.mvc
			.perform(get("/api/v1/people?limit=1&county=" + county + "&cursor=" + JsonPath.read(first, "$.next"))
				.header(HttpHeaders.AUTHORIZATION, coordinator.bearer()))
			.andExpect(jsonPath("$.next").doesNotExist())
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].id").value(volunteer.id().toString()))
			.andExpect(jsonPath("$.items[0].email").value(volunteer.email()))
			.andExpect(jsonPath("$.items[0].active").value(true))
			.andExpect(jsonPath("$.items[0].roles.length()").value(1))
			.andExpect(jsonPath("$.items[0].roles[0].county").value(county))
			.andExpect(jsonPath("$.items[0].roles[0].role").value("volunteer"));
	}

	@Test
	void showsThePeopleOfACountyToNobodyElse() throws Exception {
		for (TestPerson person : new TestPerson[] { this.people.coordinator("dunmoor"),
				this.people.verifier("larkmere") }) {
			this.mvc.perform(get("/api/v1/people?county=larkmere").header(HttpHeaders.AUTHORIZATION, person.bearer()))
				.andExpect(status().isForbidden());
		}
		this.mvc.perform(get("/api/v1/people").header(HttpHeaders.AUTHORIZATION, this.people.administrator().bearer()))
			.andExpect(status().isOk());
		this.mvc.perform(get("/api/v1/people?county=larkmere")).andExpect(status().isUnauthorized());
	}

	@Test
	void invitesTheFirstAdministratorOnlyWhereThereIsNone(CapturedOutput output) {
		String email = UUID.randomUUID() + "@example.org";
		FirstAdministrator start = new FirstAdministrator(this.invitePerson, this.jdbc,
				new MockEnvironment().withProperty("registry.first-administrator", email));
		this.jdbc.sql("update role_assignment set until_at = now() where role = 'administrator' and until_at is null")
			.update();
		start.run(new org.springframework.boot.DefaultApplicationArguments());
		assertThat(output)
			.containsPattern("administrator " + email + ", open until \\S+: invitation_[A-Za-z0-9_-]{43}");
		this.people.administrator();
		start.run(new org.springframework.boot.DefaultApplicationArguments());
		assertThat(output).contains("There is an administrator already: no invitation was made.");
		assertThat(this.jdbc.sql("select count(*) from invitation where email = ?")
			.param(email)
			.query(Integer.class)
			.single()).isOne();
	}

	private ResultActions token(String email, String password, String body) throws Exception {
		return this.mvc.perform(post("/api/v1/tokens").header(HttpHeaders.AUTHORIZATION, basic(email, password))
			.contentType(MediaType.APPLICATION_JSON)
			.content(body));
	}

	private String invite(TestPerson by, String email, String county, String role) throws Exception {
		String answer = inviting(by, email, "{\"county\": \"" + county + "\", \"role\": \"" + role + "\"}")
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.email").value(email))
			.andReturn()
			.getResponse()
			.getContentAsString();
		return JsonPath.read(answer, "$.token");
	}

	private ResultActions inviting(TestPerson by, String email, String role) throws Exception {
		return this.mvc.perform(post("/api/v1/invitations").header(HttpHeaders.AUTHORIZATION, by.bearer())
			.contentType(MediaType.APPLICATION_JSON)
			.content("{\"email\": \"" + email + "\", \"roles\": [" + role + "]}"));
	}

	private ResultActions accept(String secret, String password, String creditName) throws Exception {
		return this.mvc.perform(post("/api/v1/invitations/acceptance").contentType(MediaType.APPLICATION_JSON)
			.content("{\"token\": \"" + secret + "\", \"password\": \"" + password + "\", \"creditName\": " + creditName
					+ "}"));
	}

	private UUID tokenId(TestPerson person) {
		return this.jdbc.sql("select id from access_token where person = ?")
			.param(person.id())
			.query(UUID.class)
			.single();
	}

	private String expiredToken(TestPerson person) {
		String secret = Secret.make(MakeToken.PREFIX);
		this.jdbc.sql("""
				insert into access_token (id, person, name, hash, last4, created_at, expires_on)
				values (?, ?, 'old', ?, 'xxxx', now(), (now() at time zone 'UTC')::date - 1)""")
			.params(UUID.randomUUID(), person.id(), Secret.hash(secret))
			.update();
		return secret;
	}

	private static String basic(String email, String password) {
		return "Basic " + Base64.getEncoder().encodeToString((email + ":" + password).getBytes(StandardCharsets.UTF_8));
	}

}
