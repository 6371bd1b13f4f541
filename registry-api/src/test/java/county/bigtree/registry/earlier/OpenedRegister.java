package county.bigtree.registry.earlier;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.db.DatabaseLogin;
import county.bigtree.registry.RegistryApplication;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.people.TestPeople;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A kept register served by this release.
 */
record OpenedRegister(ConfigurableApplicationContext service, HttpClient http) implements AutoCloseable {

	private static final String DEMO_PASSWORD = "big trees in the demo county";

	static OpenedRegister serve(List<String> where, Path archives) {
		List<String> options = new ArrayList<>(where);
		options.addAll(List.of("--server.port=0", "--registry.archive.folder=" + archives, "--registry.upkeep.on=false",
				"--registry.limits.network-per-second=0"));
		return new OpenedRegister(
				new SpringApplicationBuilder(RegistryApplication.class).run(options.toArray(String[]::new)),
				HttpClient.newHttpClient());
	}

	/** The options by which a database is named. */
	static List<String> on(DatabaseLogin service, DatabaseLogin owner) {
		return List.of("--spring.datasource.url=" + service.jdbcUrl(), "--spring.datasource.username=" + service.user(),
				"--spring.datasource.password=" + service.password(), "--spring.flyway.user=" + owner.user(),
				"--spring.flyway.password=" + owner.password());
	}

	/** It is whole, and answers what the earlier release answered. */
	void assertIsAsItWas(KeptRelease release) throws Exception {
		assertThat(verify()).isEmpty();
		JsonNode kept = release.answers();
		assertThat(kept.size()).isGreaterThan(20);
		ToldAlike alike = new ToldAlike(new ArrayList<>());
		for (Map.Entry<String, JsonNode> answer : kept.properties()) {
			JsonNode now = read(answer.getKey());
			if (answer.getKey().contains("/titles")) {
				alike.compareTitles(answer.getKey(), answer.getValue().path("items"), now.path("items"));
			}
			else {
				alike.compare(answer.getKey(), answer.getValue(), now);
			}
		}
		assertThat(alike.differences()).isEmpty();
	}

	/** Files a tree with the password of the demo's volunteer, which no archive holds. */
	void fileByPassword() throws Exception {
		HttpResponse<String> made = post("/api/v1/tokens",
				"Basic " + Base64.getEncoder()
					.encodeToString(("volunteer@demo.example:" + DEMO_PASSWORD).getBytes(StandardCharsets.UTF_8)),
				"{\"name\": \"a new release\"}");
		assertThat(made.statusCode()).as(made.body()).isEqualTo(201);
		file("Bearer " + JsonMapper.shared().readTree(made.body()).path("token").stringValue());
	}

	/** Files a tree with a token made for the demo's volunteer. */
	void fileByToken() throws Exception {
		UUID volunteer = jdbc().sql("select id from person where email = 'volunteer@demo.example'")
			.query(UUID.class)
			.single();
		file(this.service.getBean(TestPeople.class).known(volunteer).bearer());
	}

	private void file(String authorization) throws Exception {
		String yesterday = jdbc().sql("select to_char(now() - interval '1 day', 'YYYY-MM-DD')")
			.query(String.class)
			.single();
		HttpResponse<String> filed = post("/api/v1/counties/larkmere/nominations", authorization, """
				{"species": "quercus-alba", "access": "public",
				 "location": {"latitude": 40.41, "longitude": -87.81, "accuracyMetres": 8},
				 "measurement": %s}""".formatted(TestTrees.measurement(100, yesterday)));
		assertThat(filed.statusCode()).as(filed.body()).isEqualTo(201);
		String tree = JsonMapper.shared().readTree(filed.body()).path("tree").stringValue();
		assertThat(jdbc().sql("select count(*) from tree where id = ?::uuid").param(tree).query(Long.class).single())
			.isEqualTo(1);
		assertThat(verify()).isEmpty();
	}

	private HttpResponse<String> post(String address, String authorization, String body) throws Exception {
		return this.http.send(HttpRequest.newBuilder(address(address))
			.header("Authorization", authorization)
			.header("Content-Type", "application/json")
			.header("Idempotency-Key", UUID.randomUUID().toString())
			.POST(HttpRequest.BodyPublishers.ofString(body))
			.build(), HttpResponse.BodyHandlers.ofString());
	}

	private JsonNode read(String address) throws Exception {
		HttpResponse<String> answer = this.http.send(HttpRequest.newBuilder(address(address)).build(),
				HttpResponse.BodyHandlers.ofString());
		assertThat(answer.statusCode()).as(address).isEqualTo(200);
		return JsonMapper.shared().readTree(answer.body());
	}

	private URI address(String address) {
		return URI.create(
				"http://127.0.0.1:" + this.service.getEnvironment().getRequiredProperty("local.server.port") + address);
	}

	private JdbcClient jdbc() {
		return this.service.getBean(JdbcClient.class);
	}

	private List<String> verify() {
		List<String> found = new ArrayList<>();
		long looked = 0;
		for (RegisterCheck check : this.service.getBeansOfType(RegisterCheck.class).values()) {
			Findings findings = new Findings(100, found::add, (count) -> {
			});
			check.look(findings);
			looked += findings.lookedAt();
		}
		assertThat(looked).isGreaterThan(500);
		return found;
	}

	@Override
	public void close() {
		this.service.close();
	}

}
