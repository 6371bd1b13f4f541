package county.bigtree.registry.watch.trace;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import com.google.protobuf.ByteString;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTestDatabase;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.disclosure.Canaries;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import io.opentelemetry.proto.trace.v1.Span;
import io.opentelemetry.sdk.trace.SdkTracerProvider;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.ContextConfiguration;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

/**
 * What is sent by the protocol of OpenTelemetry, read with its own description of it.
 */
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT,
		properties = { "management.tracing.sampling.probability=1", "registry.limits.network-per-second=0",
				"registry.limits.account-per-second=0", "registry.watch.count-work=false", "registry.upkeep.on=false" })
@AutoConfigureMockMvc
@ContextConfiguration(initializers = RegistryTestDatabase.class)
@DirtiesContext
class TracesIT {

	private static final TraceSink SINK = TraceSink.answering();

	/** Longer than it takes on a busy machine. */
	private static final Duration PATIENCE = Duration.ofMinutes(1);

	private static final String PARENT = "b7ad6b7169203331";

	private final HttpClient http = HttpClient.newHttpClient();

	@LocalServerPort
	private int port;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Autowired
	private SdkTracerProvider traces;

	@DynamicPropertySource
	static void sink(DynamicPropertyRegistry properties) {
		properties.add("management.opentelemetry.tracing.export.otlp.endpoint", SINK::address);
	}

	@AfterAll
	static void closeSink() {
		SINK.close();
	}

	@Test
	void followsTheTraceOfWhoAsksDownToTheTransaction() throws Exception {
		this.trees.county("traceland", "TRC");
		HttpResponse<String> filed = file("traceland", this.people.volunteer("traceland"), parent('1'));
		assertThat(filed.statusCode()).as(filed.body()).isEqualTo(201);
		List<Span> spans = spansOf('1', 1);
		Span request = spans.stream().filter(TracesIT::isRequest).findFirst().orElseThrow();
		assertThat(request.getName()).isEqualTo("POST /api/v1/counties/{county}/nominations");
		assertThat(hex(request.getParentSpanId())).isEqualTo(PARENT);
		assertThat(attributes(request)).containsEntry("uri", "/api/v1/counties/{county}/nominations")
			.containsEntry("method", "POST")
			.containsEntry("status", "201")
			.containsEntry("request", filed.headers().firstValue("Request-Id").orElseThrow());
		assertThat(spans).filteredOn((span) -> span.getParentSpanId().equals(request.getSpanId()))
			.isNotEmpty()
			.allSatisfy((span) -> assertThat(span.getName()).startsWith("transaction"))
			.anySatisfy((span) -> assertThat(attributes(span)).containsEntry("outcome", "COMMITTED"));
	}

	@Test
	void leavesOutWhatWhoAsksLeavesOut() throws Exception {
		String unsampled = parent('5').replaceAll("01$", "00");
		assertThat(send(request("/healthz").header("traceparent", unsampled).GET()).statusCode()).isEqualTo(200);
		assertThat(send(request("/healthz").header("traceparent", parent('6')).GET()).statusCode()).isEqualTo(200);
		assertThat(spansOf('6', 1)).isNotEmpty();
		assertThat(spans()).noneMatch((span) -> isOf(span, '5'));
	}

	@Test
	void namesTheRouteOfAnswersThatWereKept() throws Exception {
		this.trees.county("keptroute", "KRT");
		for (int times = 0; times < 3; times++) {
			assertThat(send(request("/api/v1/counties/keptroute/standings").header("traceparent", parent('3')).GET())
				.statusCode()).isEqualTo(200);
		}
		assertThat(spansOf('3', 3).stream().filter(TracesIT::isRequest).map(Span::getName))
			.containsOnly("GET /api/v1/counties/{county}/standings");
	}

	@Test
	void holdsNobodysWords() throws Exception {
		this.trees.county("wordless", "WRD");
		TestPerson filer = this.people.volunteer("wordless");
		HttpResponse<String> filed = file("wordless", filer, parent('4'));
		String tree = JsonPath.read(filed.body(), "$.tree");
		List<HttpRequest.Builder> asked = List.of(
				post("/api/v1/session", "application/json",
						"{\"email\": \"%s\", \"password\": \"%s\"}".formatted(Canaries.word("jane@example.org"),
								Canaries.word("password"))),
				post("/sign-in", "application/x-www-form-urlencoded",
						"email=" + Canaries.word("jane") + "&password=" + Canaries.word("password")),
				post("/api/v1/invitations/acceptance", "application/json",
						"{\"token\": \"%s\", \"password\": \"%s\"}".formatted(Canaries.word("token"),
								Canaries.word("password"))),
				request("/invitations?token=" + Canaries.word("token")).GET(),
				request("/api/v1/trees?tag=" + Canaries.word("tag")).GET(),
				request("/species?name=" + Canaries.word("search")).GET(),
				request("/api/v1/features/collections/trees/items?bbox=" + Canaries.LONGITUDE + "," + Canaries.LATITUDE
						+ ",-86,41")
					.GET(),
				request("/" + Canaries.word("nowhere")).GET(), request("/style/" + Canaries.word("style.css")).GET(),
				request("/api/v1/counties/" + Canaries.word("county") + "/standings").GET(),
				request("/api/v1/trees/" + Canaries.LATITUDE + "," + Canaries.LONGITUDE).GET(),
				request("/healthz").method("ZQCANARY", HttpRequest.BodyPublishers.noBody()),
				request("/api/v1/trees/" + tree).header("Authorization", filer.bearer()).GET(),
				request("/api/v1/session").header("Authorization", "Bearer " + Canaries.word("token")).GET(),
				request("/api/v1/session").header("Cookie", "session=" + Canaries.word("session")).GET());
		for (HttpRequest.Builder one : asked) {
			assertThat(send(one.header("traceparent", parent('7'))).statusCode()).isLessThan(500);
		}
		assertThat(send(request("/healthz").header("traceparent", Canaries.word("parent")).GET()).statusCode())
			.isEqualTo(200);
		assertThat(spansOf('7', asked.size())).extracting(Span::getName)
			.contains("POST /api/v1/session", "POST /sign-in", "POST /api/v1/invitations/acceptance",
					"GET /api/v1/trees/{tree}", "GET /**", "UNKNOWN UNKNOWN");
		Canaries canaries = new Canaries();
		canaries.forbid("the filer's address", Pattern.quote(filer.email()));
		canaries.forbid("the filer's token", Pattern.quote(filer.token()));
		canaries.forbid("the filer's name", Pattern.quote(filer.creditName()));
		canaries.forbid("the tree", tree);
		for (byte[] body : SINK.bodies()) {
			assertThat(canaries.in(new String(body, StandardCharsets.ISO_8859_1))).isEmpty();
		}
	}

	@Test
	void tellsOfTheJobsOfTheClock() {
		await().atMost(PATIENCE)
			.untilAsserted(
					() -> assertThat(spans()).extracting(Span::getName).anyMatch((name) -> name.startsWith("task ")));
	}

	private static boolean isRequest(Span span) {
		return span.getKind() == Span.SpanKind.SPAN_KIND_SERVER;
	}

	private static boolean isOf(Span span, char number) {
		return hex(span.getTraceId()).equals(trace(number));
	}

	private static String trace(char number) {
		return String.valueOf(number).repeat(32);
	}

	private static String parent(char number) {
		return "00-" + trace(number) + "-" + PARENT + "-01";
	}

	private HttpRequest.Builder post(String path, String type, String body) {
		return request(path).header("Content-Type", type).POST(HttpRequest.BodyPublishers.ofString(body));
	}

	private HttpResponse<String> file(String county, TestPerson filer, String parent) throws Exception {
		String body = """
				{"species": "quercus-alba", "location": {"latitude": %s, "longitude": %s, "accuracyMetres": 8},
				 "locality": "%s", "visibility": "nearby", "owner": {"name": "%s", "contact": "%s"},
				 "measurement": {"measuredOn": "2024-05-02", "measuredBy": ["%s"], "remarks": "%s", %s, %s}}"""
			.formatted(Canaries.LATITUDE, Canaries.LONGITUDE, Canaries.word("locality"), Canaries.word("owner"),
					Canaries.word("contact@example.org"), Canaries.word("measurer"), Canaries.word("remarks"),
					TestTrees.readings(100), TestTrees.CONFIRMED);
		return send(request("/api/v1/counties/" + county + "/nominations").header("Authorization", filer.bearer())
			.header("Content-Type", "application/json")
			.header("Idempotency-Key", UUID.randomUUID().toString())
			.header("traceparent", parent)
			.header("tracestate", "vendor=" + Canaries.word("state"))
			.header("baggage", "who=" + Canaries.word("baggage"))
			.header("User-Agent", Canaries.word("agent"))
			.POST(HttpRequest.BodyPublishers.ofString(body)));
	}

	private HttpRequest.Builder request(String path) {
		return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + this.port + path));
	}

	private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
		return this.http.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
	}

	/** All that came: a span is sent after the answer. */
	private List<Span> spans() {
		this.traces.forceFlush().join(30, TimeUnit.SECONDS);
		return SINK.spans();
	}

	private List<Span> spansOf(char number, int requests) {
		await().atMost(PATIENCE)
			.until(() -> spans().stream().filter((span) -> isOf(span, number) && isRequest(span)).count() == requests);
		return SINK.spans().stream().filter((span) -> isOf(span, number)).toList();
	}

	private static Map<String, String> attributes(Span span) {
		return span.getAttributesList()
			.stream()
			.collect(Collectors.toMap((one) -> one.getKey(), (one) -> one.getValue().getStringValue()));
	}

	private static String hex(ByteString id) {
		return HexFormat.of().formatHex(id.toByteArray());
	}

}
