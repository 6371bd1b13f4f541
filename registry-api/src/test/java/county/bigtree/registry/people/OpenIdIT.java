package county.bigtree.registry.people;

import java.net.http.HttpResponse;
import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTestDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.ContextConfiguration;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The way out to a provider and back, walked over real connections. What must be sent and
 * checked: OpenID Connect Core 1.0, 3.1.2.1 and 3.1.3.7 (nonce); RFC 6749, 10.12 (state);
 * RFC 7636, 4.3 (code challenge); RFC 9700, 2.1.
 */
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT,
		properties = { "registry.public-address=" + OpenIdIT.ADDRESS,
				"registry.openid.client-id=" + OpenIdProvider.CLIENT,
				"registry.openid.client-secret=" + OpenIdProvider.SECRET, "registry.limits.network-per-second=0",
				"registry.limits.account-per-second=0", "registry.sign-in.failures-of-network=1000" })
@AutoConfigureMockMvc
@ContextConfiguration(initializers = RegistryTestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@DirtiesContext
class OpenIdIT {

	static final String ADDRESS = "http://trees.example.org";

	private static final OpenIdProvider provider = OpenIdProvider.start();

	@LocalServerPort
	private int port;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	private int whileClosed;

	@DynamicPropertySource
	static void issuer(DynamicPropertyRegistry properties) {
		properties.add("registry.openid.issuer", provider::issuer);
	}

	@BeforeAll
	void openTheProviderAfterTheRegister() throws Exception {
		this.whileClosed = new OpenIdBrowser(this.port).read("/sign-in/openid").statusCode();
		provider.open();
	}

	@AfterAll
	static void closeTheProvider() {
		provider.close();
	}

	@Test
	void startsWithoutTheProviderAndSaysThatItDoesNotAnswer() {
		assertThat(this.whileClosed).isEqualTo(503);
	}

	@Test
	void asksTheProviderForACodeWithStateNonceAndChallenge() throws Exception {
		HttpResponse<String> leaving = new OpenIdBrowser(this.port).read("/sign-in/openid");
		assertThat(leaving.statusCode()).isEqualTo(302);
		assertThat(OpenIdBrowser.location(leaving)).startsWith(provider.issuer() + "/oauth2/authorize?")
			.contains("response_type=code", "client_id=" + OpenIdProvider.CLIENT, "scope=openid%20email",
					"redirect_uri=" + ADDRESS + "/sign-in/openid/answer", "code_challenge_method=S256")
			.containsPattern("[?&]state=[^&]{20,}")
			.containsPattern("[?&]nonce=[^&]{20,}")
			.containsPattern("[?&]code_challenge=[A-Za-z0-9_-]{43}(&|$)")
			.doesNotContain(OpenIdProvider.SECRET);
		assertThat(leaving.headers().firstValue("Content-Security-Policy").orElseThrow())
			.contains("default-src 'none'", "form-action 'self'")
			.doesNotContain("127.0.0.1");
	}

	@Test
	void signsInTheAccountWithTheVerifiedAddress() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		OpenIdBrowser browser = new OpenIdBrowser(this.port);
		String back = goAndReturn(browser, "verified:" + person.email().toUpperCase(java.util.Locale.ROOT));
		String before = browser.cookie();
		HttpResponse<String> answer = browser.read(back);
		assertThat(answer.statusCode()).as(answer.body()).isEqualTo(302);
		assertThat(OpenIdBrowser.location(answer)).isEqualTo(ADDRESS + "/");
		assertThat(browser.cookie()).isNotEqualTo(before).isNotEqualTo("none");
		assertThat(this.jdbc.sql("select count(*) from spring_session where session_id = ?")
			.param(new String(java.util.Base64.getDecoder().decode(before), java.nio.charset.StandardCharsets.UTF_8))
			.query(Integer.class)
			.single()).isZero();
		assertThat(events(person.email())).isEqualTo(List.of("signed-in"));
		HttpResponse<String> session = browser.read("/api/v1/session");
		assertThat(JsonPath.<String>read(session.body(), "$.person")).isEqualTo(person.id().toString());
		assertThat(this.jdbc.sql("""
				select a.attribute_name from spring_session s join spring_session_attributes a
				on a.session_primary_id = s.primary_id where s.principal_name = ? and attribute_name like 'openid%'""")
			.param(person.id().toString())
			.query(String.class)
			.list()).isEmpty();
		assertThat(browser.delete("/api/v1/session", JsonPath.read(session.body(), "$.csrfToken")).statusCode())
			.isEqualTo(204);
		assertThat(browser.read("/api/v1/session").statusCode()).isEqualTo(401);
		assertThat(browser.read(back).statusCode()).isEqualTo(401);
	}

	@ParameterizedTest
	@CsvSource({ "verified, stranger", "unverified, known", "silent, known", "verified, closed", "verified, padded",
			"verified, kelvin" })
	void refusesAllOthersAlike(String told, String whose) throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		String email = switch (whose) {
			case "stranger" -> "stranger-to-" + person.email();
			case "padded" -> " " + person.email();
			case "kelvin" -> kelvin(person);
			default -> person.email();
		};
		if ("closed".equals(whose)) {
			this.jdbc.sql("update person set active = false where id = ?").param(person.id()).update();
		}
		String recorded = "silent".equals(told) ? "" : email;
		int before = events(recorded).size();
		long accounts = accounts();
		OpenIdBrowser browser = new OpenIdBrowser(this.port);
		assertRefused(browser, goAndReturn(browser, told + ":" + email));
		assertThat(events(recorded)).hasSize(before + 1).allMatch("failed"::equals);
		assertThat(accounts()).isEqualTo(accounts);
	}

	@Test
	void refusesAnotherStateAndTakesNoSecondAnswer() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		OpenIdBrowser browser = new OpenIdBrowser(this.port);
		String back = goAndReturn(browser, "verified:" + person.email());
		int before = events("").size();
		assertRefused(browser, back.replaceFirst("state=[^&]{5}", "state=AAAAA"));
		assertThat(events("")).hasSize(before + 1);
		assertRefused(browser, back);
		assertThat(events(person.email())).isEmpty();
	}

	@Test
	void refusesAnAnswerThatAnotherBrowserWasGiven() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		String back = goAndReturn(new OpenIdBrowser(this.port), "verified:" + person.email());
		int before = events("").size();
		assertRefused(new OpenIdBrowser(this.port), back);
		assertThat(events("")).as("nobody is held back for it").hasSize(before);
		OpenIdBrowser other = new OpenIdBrowser(this.port);
		other.read("/sign-in/openid");
		assertRefused(other, back);
	}

	@ParameterizedTest
	@CsvSource({ "nonce", "code_challenge" })
	void refusesACodeThatWasMadeForAnother(String parameter) throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		OpenIdBrowser browser = new OpenIdBrowser(this.port);
		String leaving = OpenIdBrowser.location(browser.read("/sign-in/openid"));
		browser.signInAt(provider.issuer(), "verified:" + person.email());
		String other = leaving.replaceFirst("([?&]" + parameter + "=)[^&]{5}", "$1AAAAA");
		assertThat(other).isNotEqualTo(leaving);
		String back = OpenIdBrowser.location(browser.read(other));
		assertThat(back).contains("code=");
		assertRefused(browser, back);
	}

	@Test
	void refusesWhatTheProviderRefused() throws Exception {
		OpenIdBrowser browser = new OpenIdBrowser(this.port);
		String leaving = OpenIdBrowser.location(browser.read("/sign-in/openid"));
		String state = leaving.replaceFirst(".*[?&]state=([^&]*).*", "$1");
		assertRefused(browser, "/sign-in/openid/answer?error=access_denied&state=" + state);
		assertRefused(browser, "/sign-in/openid/answer");
	}

	/** Leaves for the provider, signs in there, and is told where to go back to. */
	private static String goAndReturn(OpenIdBrowser browser, String name) throws Exception {
		String leaving = OpenIdBrowser.location(browser.read("/sign-in/openid"));
		browser.signInAt(provider.issuer(), name);
		String back = OpenIdBrowser.location(browser.read(leaving));
		assertThat(back).startsWith(ADDRESS + "/sign-in/openid/answer?").contains("code=");
		return back;
	}

	private static void assertRefused(OpenIdBrowser browser, String back) throws Exception {
		HttpResponse<String> answer = browser.read(back);
		assertThat(answer.statusCode()).isEqualTo(401);
		assertThat(answer.body()).contains("\"/problems/sign-in-failed\"", "You could not be signed in by the provider")
			.doesNotContain("state", "code", "token", "nonce", "email");
		assertThat(browser.read("/api/v1/session").statusCode()).isEqualTo(401);
	}

	/** Gives the person an address with a k, and answers the one with a Kelvin sign. */
	private String kelvin(TestPerson person) {
		this.jdbc.sql("update person set email = ? where id = ?").params("k" + person.email(), person.id()).update();
		return "\u212a" + person.email();
	}

	private long accounts() {
		return this.jdbc.sql("select count(*) from person").query(Long.class).single();
	}

	private List<String> events(String email) {
		return this.jdbc.sql("select event from sign_in_event where account = ? and event <> 'held-back'")
			.param(SignInRecord.account(email))
			.query(String.class)
			.list();
	}

}
