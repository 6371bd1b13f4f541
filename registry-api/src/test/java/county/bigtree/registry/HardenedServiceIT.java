package county.bigtree.registry;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.test.context.ContextConfiguration;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The service as it stands behind a proxy that speaks https for it, with limits that are
 * soon reached; asked over real connections.
 */
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT,
		properties = { "registry.public-address=https://trees.example.org", "server.forward-headers-strategy=native",
				"registry.limits.network-per-second=1", "registry.limits.network-burst=20",
				"registry.limits.account-per-second=1", "registry.limits.account-burst=10" })
@AutoConfigureMockMvc
@ContextConfiguration(initializers = RegistryTestDatabase.class)
class HardenedServiceIT {

	/** Headers that OWASP ASVS 4.0.3 asks for in 14.4, and those of its V3.4. */
	private static final List<String> HEADERS = List.of("Content-Security-Policy", "X-Content-Type-Options",
			"Strict-Transport-Security", "Referrer-Policy", "Permissions-Policy", "Cross-Origin-Opener-Policy",
			"Cross-Origin-Resource-Policy", "X-Frame-Options");

	private final HttpClient http = HttpClient.newHttpClient();

	@LocalServerPort
	private int port;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Test
	void sendsItsHeadersWithEveryKindOfAnswer() throws Exception {
		for (String path : new String[] { "/", "/docs", "/openapi.json", "/openapi.yaml", "/api/v1/counties",
				"/api/v1/session", "/api/v1/nothing-here", "/problems", "/style/register.css" }) {
			HttpResponse<String> answer = send(from("203.0.113.1", path).GET());
			assertThat(answer.headers().map().keySet()).as(path)
				.map(String::toLowerCase)
				.containsAll(HEADERS.stream().map((name) -> name.toLowerCase(java.util.Locale.ROOT)).toList());
			assertThat(policy(answer)).contains("default-src 'none'", "frame-ancestors 'none'", "base-uri 'none'")
				.doesNotContain("unsafe", "*", "http:");
			assertThat(answer.headers().firstValue("X-Content-Type-Options")).hasValue("nosniff");
			assertThat(answer.headers().firstValue("Strict-Transport-Security")).hasValue("max-age=31536000");
			assertThat(answer.headers().firstValue("Server")).isEmpty();
		}
	}

	@Test
	void describesItselfInYamlToo() throws Exception {
		assertThat(send(from("203.0.113.9", "/openapi.yaml").GET()).body()).startsWith("openapi: 3.1.0");
	}

	@Test
	void showsNothingInlineInItsPages() throws Exception {
		for (String path : new String[] { "/", "/problems", "/cautions", "/measure", "/about",
				"/swagger-ui/index.html" }) {
			String page = send(from("203.0.113.2", path).GET()).body();
			assertThat(page).as(path)
				.doesNotContainPattern("<script(?![^>]*\\bsrc=)[^>]*>")
				.doesNotContain("<style", " style=\"", "javascript:")
				.doesNotContainPattern("\\son[a-z]+=\"");
		}
	}

	@Test
	void bindsTheCookieToTheHostAndToHttps() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		HttpResponse<String> answer = send(
				from("203.0.113.3", "/api/v1/session").header("Content-Type", "application/json")
					.POST(HttpRequest.BodyPublishers.ofString(
							"{\"email\": \"" + person.email() + "\", \"password\": \"" + TestPeople.PASSWORD + "\"}")));
		assertThat(answer.statusCode()).isEqualTo(200);
		String cookie = answer.headers().firstValue("Set-Cookie").orElseThrow();
		assertThat(cookie).startsWith("__Host-session=")
			.contains("Secure", "HttpOnly", "SameSite=Lax", "Path=/")
			.doesNotContain("Domain");
		assertThat(
				send(from("203.0.113.3", "/api/v1/session").header("Cookie", cookie.split(";")[0]).GET()).statusCode())
			.isEqualTo(200);
	}

	@Test
	void holdsBackANetworkAndServesTheOthers() throws Exception {
		int served = 0;
		HttpResponse<String> answer = send(from("203.0.113.4", "/api/v1/counties").GET());
		while (answer.statusCode() == 200 && served < 60) {
			served++;
			answer = send(from("203.0.113.4", "/api/v1/counties").GET());
		}
		assertThat(answer.statusCode()).isEqualTo(429);
		assertThat(served).isBetween(20, 59);
		assertThat(Integer.parseInt(answer.headers().firstValue("Retry-After").orElseThrow())).isBetween(1, 2);
		assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
		assertThat(answer.body()).contains("/problems/too-many-requests");
		assertThat(policy(answer)).contains("default-src 'none'");
		assertThat(send(from("203.0.113.5", "/api/v1/counties").GET()).statusCode()).isEqualTo(200);
	}

	@Test
	void holdsBackWhoReadsKeptAnswersAndSendsTheirHeadersAlike() throws Exception {
		this.trees.county("keptlimits", "KFP");
		String path = "/api/v1/counties/keptlimits/standings";
		HttpResponse<String> made = send(from("203.0.113.61", path).GET());
		HttpResponse<String> answer = made;
		int served = 0;
		while (answer.statusCode() == 200 && served < 60) {
			served++;
			assertThat(answer.body()).isEqualTo(made.body());
			assertThat(withoutDate(answer)).isEqualTo(withoutDate(made));
			answer = send(from("203.0.113.61", path).GET());
		}
		assertThat(answer.statusCode()).isEqualTo(429);
		assertThat(served).isBetween(20, 59);
		assertThat(send(from("203.0.113.62", path).GET()).statusCode()).isEqualTo(200);
	}

	private static Map<String, List<String>> withoutDate(HttpResponse<String> answer) {
		Map<String, List<String>> headers = new TreeMap<>(answer.headers().map());
		headers.remove("date");
		headers.remove("request-id");
		return headers;
	}

	@Test
	void holdsBackAnAccountFromWhereverItAsks() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		int status = 200;
		int served = 0;
		for (int i = 0; i < 60 && status == 200; i++) {
			status = send(
					from("203.0.113." + (100 + i), "/api/v1/session").header("Authorization", person.bearer()).GET())
				.statusCode();
			served += (status == 200) ? 1 : 0;
		}
		assertThat(status).isEqualTo(429);
		assertThat(served).isBetween(10, 59);
		assertThat(send(from("203.0.113.200", "/api/v1/session")
			.header("Authorization", this.people.volunteer("larkmere").bearer())
			.GET()).statusCode()).isEqualTo(200);
	}

	@Test
	void takesSoManyLettersAnHourFromANetworkToACounty() throws Exception {
		this.trees.county("letterbox", "LBX");
		this.trees.county("letterbag", "LBG");
		for (int written = 0; written < 10; written++) {
			assertThat(letter("203.0.113.77", "letterbox").statusCode()).isEqualTo(201);
		}
		HttpResponse<String> refused = letter("203.0.113.77", "letterbox");
		assertThat(refused.statusCode()).isEqualTo(429);
		assertThat(refused.headers().firstValueAsLong("Retry-After").orElse(0)).isBetween(300L, 361L);
		assertThat(letter("203.0.113.77", "letterbag").statusCode()).isEqualTo(201);
		assertThat(letter("203.0.113.78", "letterbox").statusCode()).isEqualTo(201);
	}

	private HttpResponse<String> letter(String network, String county) throws IOException, InterruptedException {
		return send(from(network, "/api/v1/counties/" + county + "/letters").header("Content-Type", "application/json")
			.POST(HttpRequest.BodyPublishers.ofString("{\"about\": \"other\", \"text\": \"Good morning.\"}")));
	}

	@Test
	void refusesWhatIsTooLongOrTooDeep() throws Exception {
		assertThat(points("{\"girth\": " + "[".repeat(40) + "]".repeat(40) + "}").statusCode()).isEqualTo(400);
		assertThat(points("{\"girth\": " + "9".repeat(50) + "}").statusCode()).isEqualTo(400);
		assertThat(points("{\"" + "x".repeat(300) + "\": 1}").statusCode()).isEqualTo(400);
		assertThat(points("{\"girth\": \"" + "x".repeat(1 << 20) + "\"}").statusCode()).isEqualTo(413);
		assertThat(
				send(from("203.0.113.6", "/api/v1/counties").header("X-Long", "x".repeat(20_000)).GET()).statusCode())
			.isIn(400, 431);
		assertThat(send(from("203.0.113.6", "/api/v1/counties?" + "a=b&".repeat(300)).GET()).statusCode())
			.isEqualTo(400);
		assertThat(send(from("203.0.113.6", "/").method("TRACE", HttpRequest.BodyPublishers.noBody())).statusCode())
			.isEqualTo(405);
	}

	private HttpResponse<String> points(String body) throws IOException, InterruptedException {
		return send(from("203.0.113.7", "/api/v1/measuring/points").header("Content-Type", "application/json")
			.POST(HttpRequest.BodyPublishers.ofString(body)));
	}

	private HttpRequest.Builder from(String address, String path) {
		return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + this.port + path))
			.header("X-Forwarded-For", address);
	}

	private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
		return this.http.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
	}

	private static String policy(HttpResponse<String> answer) {
		return answer.headers().firstValue("Content-Security-Policy").orElseThrow();
	}

}
