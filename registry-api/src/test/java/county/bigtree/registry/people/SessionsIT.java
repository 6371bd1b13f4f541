package county.bigtree.registry.people;

import java.util.List;
import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class SessionsIT {

	private static final String WANTED = "nine herons over the mill";

	@LocalServerPort
	private int port;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void signsInWithACookieThatScriptsAndOtherSitesDontGet() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = new Browser(this.mvc, "198.51.100.1");
		String set = browser.signIn(person.email(), TestPeople.PASSWORD)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.person").value(person.id().toString()))
			.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "private, no-store"))
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.SET_COOKIE);
		assertThat(set).startsWith("session=").contains("Path=/;", "HttpOnly", "SameSite=Lax").doesNotContain("Domain");
		browser.read("/api/v1/session")
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.roles[0].county").value("larkmere"))
			.andExpect(jsonPath("$.csrfToken").isString());
		assertThat(sessions(person)).isOne();
	}

	@Test
	void signsOutAndForgetsTheSession() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = signedIn(person);
		browser.write(delete("/api/v1/session"), null).andExpect(status().isNoContent());
		browser.read("/api/v1/session").andExpect(status().isUnauthorized());
		assertThat(sessions(person)).isZero();
	}

	@Test
	void signsOutEverywhere() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser here = signedIn(person);
		Browser there = signedIn(person);
		Browser other = signedIn(this.people.volunteer("larkmere"));
		here.write(delete("/api/v1/session?everywhere=true"), null).andExpect(status().isNoContent());
		here.read("/api/v1/session").andExpect(status().isUnauthorized());
		there.read("/api/v1/session").andExpect(status().isUnauthorized());
		other.read("/api/v1/session").andExpect(status().isOk());
	}

	@Test
	void takesNoSessionIdThatCameWithTheRequest() throws Exception {
		Browser planted = signedIn(this.people.volunteer("larkmere"));
		Cookie before = planted.cookie();
		TestPerson victim = this.people.volunteer("larkmere");
		planted.signIn(victim.email(), TestPeople.PASSWORD).andExpect(status().isOk());
		assertThat(planted.cookie().getValue()).isNotEqualTo(before.getValue());
		this.mvc.perform(get("/api/v1/session").cookie(before)).andExpect(status().isUnauthorized());
		this.mvc.perform(get("/api/v1/session").cookie(new Cookie("session", "bm90LWEtc2Vzc2lvbg==")))
			.andExpect(status().isUnauthorized());
	}

	@Test
	void refusesWritesByCookieWithoutTheTokenOfThatSession() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = signedIn(person);
		Browser other = signedIn(this.people.volunteer("larkmere"));
		browser.send(delete("/api/v1/session"), null)
			.andExpect(status().isForbidden())
			.andExpect(jsonPath("$.type").value("/problems/cross-site"));
		browser.send(delete("/api/v1/session").header("X-CSRF-TOKEN", other.csrfToken()), null)
			.andExpect(status().isForbidden());
		browser.send(post("/api/v1/tokens"), "{\"name\": \"x\"}").andExpect(status().isForbidden());
		browser.read("/api/v1/session").andExpect(status().isOk());
		browser.send(delete("/api/v1/session").header(HttpHeaders.AUTHORIZATION, person.bearer()), null)
			.andExpect(status().isNoContent());
	}

	@Test
	void takesJsonAloneForSigningIn() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		String body = "{\"email\": \"" + person.email() + "\", \"password\": \"" + TestPeople.PASSWORD + "\"}";
		for (MediaType type : new MediaType[] { MediaType.TEXT_PLAIN, MediaType.APPLICATION_FORM_URLENCODED,
				MediaType.MULTIPART_FORM_DATA }) {
			this.mvc.perform(post("/api/v1/session").contentType(type).content(body))
				.andExpect(status().isUnsupportedMediaType());
		}
	}

	@Test
	void makesATokenInASession() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		signedIn(person).write(post("/api/v1/tokens"), "{\"name\": \"by cookie\"}").andExpect(status().isCreated());
	}

	@Test
	void saysAndTakesTheSameForAWrongPasswordAndAnUnknownAddress() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = new Browser(this.mvc, "198.51.100.2");
		String wrong = refused(browser, person.email());
		assertThat(refused(browser, "nobody@example.org")).isEqualTo(wrong);
		this.jdbc.sql("update person set active = false where id = ?").param(person.id()).update();
		assertThat(refused(browser, person.email())).isEqualTo(wrong);
		List<Long> known = new java.util.ArrayList<>();
		List<Long> unknown = new java.util.ArrayList<>();
		for (int i = 0; i < 5; i++) {
			known.add(time(browser, person.email()));
			unknown.add(time(browser, "nobody-" + i + "@example.org"));
		}
		// A hash takes some 20 ms, all else a fraction of that: without one for nobody
		// the least would be far apart. Common practice, no source.
		assertThat((double) java.util.Collections.min(unknown)).isGreaterThan(0.4 * java.util.Collections.min(known));
	}

	@Test
	void holdsBackWhoeverFailsTooOftenKnownOrNot() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = new Browser(this.mvc, "198.51.100.3");
		for (String email : new String[] { person.email(), "unknown-" + UUID.randomUUID() + "@example.org" }) {
			for (int i = 0; i < 10; i++) {
				browser.signIn(email, "wrong").andExpect(status().isUnauthorized());
			}
			String wait = browser.signIn(email, TestPeople.PASSWORD)
				.andExpect(status().isTooManyRequests())
				.andExpect(jsonPath("$.type").value("/problems/too-many-requests"))
				.andReturn()
				.getResponse()
				.getHeader(HttpHeaders.RETRY_AFTER);
			assertThat(Integer.parseInt(String.valueOf(wait))).isBetween(800, 901);
		}
		browser
			.send(post("/api/v1/tokens").header(HttpHeaders.AUTHORIZATION, basic(person.email(), TestPeople.PASSWORD)),
					"{\"name\": \"x\"}")
			.andExpect(status().isTooManyRequests())
			.andExpect(header().exists(HttpHeaders.RETRY_AFTER));
		new Browser(this.mvc, "198.51.100.4").signIn(person.email(), TestPeople.PASSWORD).andExpect(status().isOk());
		this.jdbc.sql("update sign_in_event set event = 'held-back' where client_network = '198.51.100.3'").update();
		browser.signIn(person.email(), TestPeople.PASSWORD).andExpect(status().isOk());
	}

	@Test
	void holdsBackANetworkThatTriesManyAccounts() throws Exception {
		Browser browser = new Browser(this.mvc, "2001:db8:1:2::3");
		this.jdbc.sql("""
				insert into sign_in_event (id, happened_at, event, account, client_network)
				select gen_random_uuid(), now(), 'failed', sha256(n::text::bytea), '2001:db8:1:2:0:0:0:0/64'
				from generate_series(1, 1000) n""").update();
		TestPerson person = this.people.volunteer("larkmere");
		browser.signIn(person.email(), TestPeople.PASSWORD).andExpect(status().isTooManyRequests());
		new Browser(this.mvc, "2001:db8:1:2:ffff::9").signIn(person.email(), TestPeople.PASSWORD)
			.andExpect(status().isTooManyRequests());
		new Browser(this.mvc, "2001:db8:1:3::3").signIn(person.email(), TestPeople.PASSWORD).andExpect(status().isOk());
	}

	@Test
	void holdsBackAnAccountThatIsTriedFromEverywhere() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		this.jdbc.sql("""
				insert into sign_in_event (id, happened_at, event, account, client_network)
				select gen_random_uuid(), now(), 'failed', :account, 'network ' || n from generate_series(1, 100) n""")
			.param("account", SignInRecord.account(person.email()))
			.update();
		new Browser(this.mvc, "198.51.100.5").signIn(person.email(), TestPeople.PASSWORD)
			.andExpect(status().isTooManyRequests());
	}

	@Test
	void changesThePasswordForThePresentOneAndEndsOtherSessions() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser here = signedIn(person);
		Browser there = signedIn(person);
		here.write(put("/api/v1/people/me/password"), change("not the password", WANTED))
			.andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/presentPassword"));
		here.write(put("/api/v1/people/me/password"), change(TestPeople.PASSWORD, WANTED))
			.andExpect(status().isNoContent());
		here.read("/api/v1/session").andExpect(status().isOk());
		there.read("/api/v1/session").andExpect(status().isUnauthorized());
		there.signIn(person.email(), TestPeople.PASSWORD).andExpect(status().isUnauthorized());
		there.signIn(person.email(), WANTED).andExpect(status().isOk());
	}

	@Test
	void changesTheAddressForThePresentPasswordAndEndsOtherSessions() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser here = signedIn(person);
		Browser there = signedIn(person);
		String wanted = "moved." + person.id() + "@example.org";
		here.write(put("/api/v1/people/me/email"), address(wanted, "not the password"))
			.andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/presentPassword"));
		here.write(put("/api/v1/people/me/email"), address("no address", TestPeople.PASSWORD))
			.andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/email"));
		here.write(put("/api/v1/people/me/email"), address(wanted, TestPeople.PASSWORD))
			.andExpect(status().isNoContent());
		here.read("/api/v1/people/me").andExpect(jsonPath("$.email").value(wanted));
		here.read("/api/v1/people/me/sign-ins").andExpect(jsonPath("$.items[0].event").value("email-changed"));
		there.read("/api/v1/session").andExpect(status().isUnauthorized());
		there.signIn(person.email(), TestPeople.PASSWORD).andExpect(status().isUnauthorized());
		there.signIn(wanted, TestPeople.PASSWORD).andExpect(status().isOk());
	}

	@Test
	void takesNobodyElsesAddress() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		TestPerson other = this.people.volunteer("larkmere");
		Browser browser = signedIn(person);
		browser
			.write(put("/api/v1/people/me/email"),
					address(other.email().toUpperCase(java.util.Locale.ROOT), TestPeople.PASSWORD))
			.andExpect(status().is(422))
			.andExpect(jsonPath("$.detail").value("This address can't be used here."));
		browser.read("/api/v1/people/me").andExpect(jsonPath("$.email").value(person.email()));
	}

	private static String address(String email, String password) {
		return "{\"email\": \"%s\", \"presentPassword\": \"%s\"}".formatted(email, password);
	}

	@Test
	void refusesPasswordsThatAreTriedFirst() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = signedIn(person);
		for (String easy : new String[] { "password1234", "aaaaaaaaaaaaaaaa", "qwertyuiop[]", "123456789012",
				person.email() }) {
			browser.write(put("/api/v1/people/me/password"), change(TestPeople.PASSWORD, easy))
				.andExpect(status().is(422))
				.andExpect(jsonPath("$.errors[0].code").value("too-easy"));
		}
		browser.write(put("/api/v1/people/me/password"), change(TestPeople.PASSWORD, "pässwörter ☘ sind frei"))
			.andExpect(status().isNoContent());
	}

	@Test
	void resetsThePasswordOnceAndEndsSessionsAndTokens() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		TestPerson coordinator = this.people.coordinator("larkmere");
		Browser browser = signedIn(person);
		String first = madeReset(coordinator, person);
		String secret = madeReset(coordinator, person);
		assertThat(secret).matches("reset_[A-Za-z0-9_-]{43}");
		reset(first, WANTED, 422);
		reset(secret, "password1234", 422);
		browser.read("/api/v1/session").andExpect(status().isOk());
		reset(secret, WANTED, 204);
		reset(secret, WANTED, 422);
		browser.read("/api/v1/session").andExpect(status().isUnauthorized());
		this.mvc.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION, person.bearer()))
			.andExpect(status().isUnauthorized());
		browser.signIn(person.email(), WANTED).andExpect(status().isOk());
		assertThat(this.jdbc.sql("select string_agg(r::text, ' ') from password_reset r").query(String.class).single())
			.doesNotContain(secret, secret.substring(6));
	}

	@Test
	void takesNoResetAfterADay() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		String secret = madeReset(this.people.administrator(), person);
		this.jdbc.sql("select 1").query(Integer.class).single();
		String old = Secret.make("reset_");
		this.jdbc.sql("""
				insert into password_reset (id, person, hash, created_at, expires_at)
				values (gen_random_uuid(), ?, ?, now() - interval '25 hours', now() - interval '1 hour')""")
			.params(person.id(), Secret.hash(old))
			.update();
		reset(old, WANTED, 422);
		reset(secret, WANTED, 204);
	}

	@Test
	void letsACoordinatorResetNobodyWhoHoldsRolesElsewhere() throws Exception {
		TestPerson coordinator = this.people.coordinator("larkmere");
		TestPerson both = this.people.with(CountyRole.of("larkmere", Role.VOLUNTEER),
				CountyRole.of("dunmoor", Role.COORDINATOR));
		TestPerson administrator = this.people.with(CountyRole.of("larkmere", Role.VOLUNTEER),
				CountyRole.administrator());
		for (TestPerson person : new TestPerson[] { both, administrator }) {
			makingReset(coordinator, person, 403);
		}
		makingReset(coordinator, this.people.volunteer("dunmoor"), 404);
		makingReset(this.people.verifier("larkmere"), this.people.volunteer("larkmere"), 403);
		makingReset(this.people.administrator(), both, 201);
	}

	@Test
	void tellsOnesOwnSignInsAndTheAdministratorAll() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = new Browser(this.mvc, "198.51.100.6");
		browser.signIn(person.email(), "wrong");
		browser.signIn(person.email(), TestPeople.PASSWORD);
		browser.read("/api/v1/people/me/sign-ins")
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].event").value("signed-in"))
			.andExpect(jsonPath("$.items[0].network").value("198.51.100.6"))
			.andExpect(jsonPath("$.items[1].event").value("failed"));
		browser.read("/api/v1/sign-ins").andExpect(status().isForbidden());
		TestPerson administrator = this.people.administrator();
		this.mvc.perform(
				get("/api/v1/sign-ins?person=" + person.id()).header(HttpHeaders.AUTHORIZATION, administrator.bearer()))
			.andExpect(jsonPath("$.items.length()").value(2));
		this.mvc.perform(get("/api/v1/sign-ins?limit=1").header(HttpHeaders.AUTHORIZATION, administrator.bearer()))
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.next").isString());
	}

	@Test
	void believesNobodyWhoSaysToAskForAnother() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		java.net.http.HttpClient.newHttpClient()
			.send(java.net.http.HttpRequest
				.newBuilder(java.net.URI.create("http://127.0.0.1:" + this.port + "/api/v1/session"))
				.header("X-Forwarded-For", "203.0.113.99")
				.header("Forwarded", "for=203.0.113.99")
				.header("Content-Type", "application/json")
				.POST(java.net.http.HttpRequest.BodyPublishers
					.ofString("{\"email\": \"" + person.email() + "\", \"password\": \"wrong\"}"))
				.build(), java.net.http.HttpResponse.BodyHandlers.discarding());
		assertThat(this.jdbc.sql("select client_network from sign_in_event where account = ?")
			.param(SignInRecord.account(person.email()))
			.query(String.class)
			.single()).isEqualTo("127.0.0.1");
	}

	@Test
	void sendsNoPromiseOfHttpsWhereThereIsNone() throws Exception {
		this.mvc.perform(get("/api/v1/counties"))
			.andExpect(header().doesNotExist("Strict-Transport-Security"))
			.andExpect(header().exists("Content-Security-Policy"));
	}

	@Test
	void heedsNoSessionOfAClosedAccount() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = signedIn(person);
		this.jdbc.sql("update person set active = false where id = ?").param(person.id()).update();
		browser.read("/api/v1/session").andExpect(status().isUnauthorized());
	}

	@Test
	void endsASessionThatWasLeftAlone() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Browser browser = signedIn(person);
		assertThat(this.jdbc.sql("select max_inactive_interval from spring_session where principal_name = ?")
			.param(person.id().toString())
			.query(Integer.class)
			.single()).isEqualTo(30 * 60);
		this.jdbc
			.sql("update spring_session set last_access_time = last_access_time - 31 * 60000 where principal_name = ?")
			.param(person.id().toString())
			.update();
		browser.read("/api/v1/session").andExpect(status().isUnauthorized());
	}

	private Browser signedIn(TestPerson person) throws Exception {
		Browser browser = new Browser(this.mvc, "127.0.0.1");
		browser.signIn(person.email(), TestPeople.PASSWORD).andExpect(status().isOk());
		return browser;
	}

	private int sessions(TestPerson person) {
		return this.jdbc.sql("select count(*) from spring_session where principal_name = ?")
			.param(person.id().toString())
			.query(Integer.class)
			.single();
	}

	private static String refused(Browser browser, String email) throws Exception {
		return browser.signIn(email, "not the password")
			.andExpect(status().isUnauthorized())
			.andExpect(header().string(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"registry\""))
			.andExpect(header().doesNotExist(HttpHeaders.SET_COOKIE))
			.andReturn()
			.getResponse()
			.getContentAsString()
			.replaceFirst("\"request\":\"[^\"]*\"", "the name of this request");
	}

	private static long time(Browser browser, String email) throws Exception {
		long start = System.nanoTime();
		refused(browser, email);
		return System.nanoTime() - start;
	}

	private static String change(String present, String wanted) {
		return "{\"presentPassword\": \"" + present + "\", \"newPassword\": \"" + wanted + "\"}";
	}

	private void makingReset(TestPerson by, TestPerson person, int expected) throws Exception {
		this.mvc.perform(post("/api/v1/people/" + person.id() + "/password-reset").header(HttpHeaders.AUTHORIZATION,
				by.bearer()))
			.andExpect(status().is(expected));
	}

	private String madeReset(TestPerson by, TestPerson person) throws Exception {
		return JsonPath.read(
				this.mvc
					.perform(post("/api/v1/people/" + person.id() + "/password-reset").header(HttpHeaders.AUTHORIZATION,
							by.bearer()))
					.andExpect(status().isCreated())
					.andReturn()
					.getResponse()
					.getContentAsString(),
				"$.token");
	}

	private void reset(String secret, String password, int expected) throws Exception {
		this.mvc
			.perform(post("/api/v1/people/password-reset").contentType(MediaType.APPLICATION_JSON)
				.content("{\"token\": \"" + secret + "\", \"newPassword\": \"" + password + "\"}"))
			.andExpect(status().is(expected));
	}

	private static String basic(String email, String password) {
		return "Basic " + java.util.Base64.getEncoder()
			.encodeToString((email + ":" + password).getBytes(java.nio.charset.StandardCharsets.UTF_8));
	}

}
