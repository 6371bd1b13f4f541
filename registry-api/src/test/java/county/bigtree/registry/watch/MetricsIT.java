package county.bigtree.registry.watch;

import java.util.Map;
import java.util.TreeMap;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Lines are read by the text format of Prometheus, version 0.0.4: a name, labels in
 * braces, a figure (its documentation, "Exposition formats").
 */
@RegistryTest
class MetricsIT {

	private static final String EVALUATED = "registry_standings_evaluated_total";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private CountWork count;

	@Test
	void countsTheWorkThatWaitsAndWhatWasJudged() throws Exception {
		this.trees.county("watchland", "WTL");
		TestPerson finder = this.people.volunteer("watchland");
		Work before = this.count.count();
		double judged = figures().getOrDefault(EVALUATED, 0.0);
		TestTrees.Filed filed = this.trees.nominate("watchland", finder, "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		Work filedOne = this.count.count();
		assertThat(filedOne.waiting()).isEqualTo(before.waiting() + 1);
		assertThat(filedOne.oldestSeconds()).isGreaterThan(0);
		this.trees.signOff(filed.measurement(), this.people.verifier("watchland"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		assertThat(this.count.count().waiting()).isEqualTo(before.waiting());
		assertThat(figures().get(EVALUATED)).isGreaterThan(judged);
	}

	@Test
	void tellsOfTheRequestsTheMemoryAndTheConnections() throws Exception {
		this.mvc.perform(get("/api/v1/counties")).andExpect(status().isOk());
		assertThat(figures().keySet()).anyMatch((name) -> name.startsWith("http_server_requests_seconds_count"))
			.anyMatch((name) -> name.startsWith("jvm_memory_used_bytes"))
			.anyMatch((name) -> name.startsWith("hikaricp_connections_active"));
	}

	@Test
	void namesEachRequestItself() throws Exception {
		String first = named();
		assertThat(first).matches("[0-9a-f-]{36}").isNotEqualTo(named());
		this.mvc.perform(get("/api/v1/nowhere").header("Request-Id", "forged"))
			.andExpect(header().string("Request-Id", org.hamcrest.Matchers.not("forged")))
			.andExpect((result) -> assertThat(result.getResponse().getContentAsString())
				.contains("\"request\":\"" + result.getResponse().getHeader("Request-Id") + "\""));
	}

	private String named() throws Exception {
		return String.valueOf(this.mvc.perform(get("/healthz")).andReturn().getResponse().getHeader("Request-Id"));
	}

	private Map<String, Double> figures() throws Exception {
		String text = this.mvc.perform(get("/metrics").header("Authorization", this.people.administrator().bearer()))
			.andExpect(status().isOk())
			.andExpect(content().contentTypeCompatibleWith("text/plain"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		Map<String, Double> figures = new TreeMap<>();
		text.lines().filter((line) -> !line.startsWith("#")).forEach((line) -> {
			assertThat(line).matches("[a-zA-Z_:][a-zA-Z0-9_:]*(\\{.*})? \\S+");
			int space = line.lastIndexOf(' ');
			figures.put(line.substring(0, space), Double.valueOf(line.substring(space + 1)));
		});
		return figures;
	}

}
