package county.bigtree.registry.watch;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.RegistryApplication;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.disclosure.Canaries;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.env.Environment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

/**
 * The log as JSON, as a node in a process of its own writes it.
 */
@RegistryTest
class StructuredLogIT {

	private static final Duration PATIENCE = Duration.ofMinutes(3);

	private static final Pattern STARTED = Pattern.compile("Tomcat started on port (\\d+)");

	private final HttpClient http = HttpClient.newHttpClient();

	@Autowired
	private Environment environment;

	@Autowired
	private TestPeople people;

	@ParameterizedTest
	@CsvSource({ "ecs, request, traceId", "gelf, _request, _traceId", "logstash, request, traceId" })
	void isJsonThatNamesTheRequestAndHoldsNobodysWords(String format, String request, String trace,
			@TempDir Path folder) throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Path log = folder.resolve("log");
		Path errors = folder.resolve("errors");
		Process node = start(format, log, errors);
		String name;
		try {
			await().atMost(PATIENCE).until(() -> port(log) != 0 || !node.isAlive());
			int port = port(log);
			assertThat(port).as(Files.readString(errors)).isNotZero();
			send(port, "/api/v1/trees?tag=" + Canaries.word("tag"), person);
			send(port, "/" + Canaries.word("nowhere"), person);
			HttpResponse<String> refused = send(port, "/metrics?asked=" + Canaries.word("query"), person);
			assertThat(refused.statusCode()).isEqualTo(403);
			name = refused.headers().firstValue("Request-Id").orElseThrow();
		}
		finally {
			node.destroy();
			assertThat(node.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)).isTrue();
		}
		List<String> lines = Files.readAllLines(log);
		assertThat(lines).hasSizeGreaterThan(5);
		assertThat(lines.stream()
			.map(StructuredLogIT::read)
			.filter((line) -> line.path(request).stringValue("").equals(name))).isNotEmpty()
			.allMatch((line) -> line.path(trace).stringValue("").matches("[0-9a-f]{32}"));
		assertThat(Files.readString(errors)).isEmpty();
		Canaries canaries = new Canaries();
		canaries.forbid("the asker's address", Pattern.quote(person.email()));
		canaries.forbid("the asker's token", Pattern.quote(person.token()));
		assertThat(canaries.in(String.join("\n", lines))).isEmpty();
	}

	private Process start(String format, Path log, Path errors) throws IOException {
		ProcessBuilder builder = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
				"-XX:TieredStopAtLevel=1", "-cp",
				System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
				RegistryApplication.class.getName(), "--server.port=0", "--spring.flyway.enabled=false",
				"--registry.upkeep.on=false", "--logging.structured.format.console=" + format,
				"--management.tracing.sampling.probability=1",
				"--management.opentelemetry.tracing.export.otlp.endpoint=http://127.0.0.1:1/v1/traces",
				"--spring.datasource.url=" + this.environment.getProperty("spring.datasource.url"),
				"--spring.datasource.username=" + this.environment.getProperty("spring.datasource.username"))
			.redirectOutput(log.toFile())
			.redirectError(errors.toFile());
		builder.environment()
			.put("SPRING_DATASOURCE_PASSWORD",
					String.valueOf(this.environment.getProperty("spring.datasource.password")));
		return builder.start();
	}

	private static int port(Path log) throws IOException {
		Matcher started = STARTED.matcher(Files.readString(log));
		return started.find() ? Integer.parseInt(started.group(1)) : 0;
	}

	private HttpResponse<String> send(int port, String path, TestPerson person) throws Exception {
		return this.http.send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
			.header("Authorization", person.bearer())
			.build(), HttpResponse.BodyHandlers.ofString());
	}

	private static JsonNode read(String line) {
		return JsonMapper.shared().readTree(line);
	}

}
