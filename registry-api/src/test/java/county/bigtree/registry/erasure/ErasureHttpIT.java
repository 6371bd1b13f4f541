package county.bigtree.registry.erasure;

import java.util.ArrayList;
import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Words about people are erased where they ask for it, and the register stays whole.
 */
@RegistryTest
class ErasureHttpIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private List<RegisterCheck> checks;

	@Test
	void erasesWhatIsKeptInWordsAndLeavesTheRegisterWhole() throws Exception {
		this.trees.county("wordsgone", "EZA");
		TestPerson coordinator = this.people.coordinator("wordsgone");
		String nomination = made("/api/v1/counties/wordsgone/nominations",
				"""
						{"species": "quercus-alba", "location": {"latitude": 40.1, "longitude": -86.2},
						 "filedFor": {"name": "zqerased D", "contact": "zqerased school", "credit": "zqerased W", "consentToCredit": true},
						 "measurement": %s}"""
					.formatted(TestTrees.measurement(100, "2020-05-02")),
				this.people.volunteer("wordsgone"));
		String tree = JsonPath.read(nomination, "$.tree");
		String owner = JsonPath.read(made("/api/v1/trees/" + tree + "/owners",
				"{\"name\": \"zqerased L\", \"contact\": \"zqerased mill\"}", coordinator), "$.id");
		made("/api/v1/owners/" + owner + "/consents", """
				{"purposes": ["listing"], "given": true, "how": "letter", "remarks": "zqerased dog"}""", coordinator);
		String letter = JsonPath.read(made("/api/v1/counties/wordsgone/letters",
				"{\"about\": \"tip\", \"text\": \"zqerased elm\", \"contact\": \"zqerased N\"}",
				this.people.volunteer("wordsgone")), "$.id");
		String finder = "/api/v1/nominations/" + JsonPath.read(nomination, "$.id") + "/filed-for";
		this.trees
			.decide("/api/v1/letters/" + letter, "/outcome", "{\"became\": \"answer\", \"answer\": \"zqerased reply\"}",
					coordinator)
			.andExpect(status().isOk());
		erase("/api/v1/owners/" + owner, coordinator).andExpect(jsonPath("$.pieces").value(3));
		erase("/api/v1/letters/" + letter, coordinator).andExpect(jsonPath("$.pieces").value(3));
		erase(finder, coordinator).andExpect(jsonPath("$.pieces").value(2));
		long changes = changes();
		erase(finder, coordinator).andExpect(jsonPath("$.pieces").value(0));
		assertThat(changes()).as("changes where nothing was left to erase").isEqualTo(changes);
		this.trees.ask(get("/api/v1/owners/" + owner), coordinator)
			.andExpect(jsonPath("$.name").value(nullValue()))
			.andExpect(jsonPath("$.consents[0].holds").value(true));
		this.trees.ask(get("/api/v1/letters/" + letter), coordinator)
			.andExpect(jsonPath("$.text").value(nullValue()))
			.andExpect(jsonPath("$.contact").value(nullValue()));
		this.trees.ask(get(finder), coordinator).andExpect(jsonPath("$.name").value(nullValue()));
		assertThat(this.jdbc.sql("select count(*) from keyed_answer where convert_from(body, 'UTF8') like '%zqerased%'")
			.query(Long.class)
			.single()).as("answers that still tell the words").isZero();
		assertThat(
				this.jdbc.sql("select count(*) from text_body where body like '%zqerased%'").query(Long.class).single())
			.isZero();
		List<String> found = new ArrayList<>();
		for (RegisterCheck check : this.checks) {
			check.look(new Findings(1000, found::add, (looked) -> {
			}));
		}
		assertThat(found).noneMatch((sentence) -> sentence.contains("wordsgone"));
	}

	private long changes() {
		return this.jdbc.sql("select count(*) from change where county = 'wordsgone'").query(Long.class).single();
	}

	private ResultActions erase(String address, TestPerson coordinator) throws Exception {
		return this.trees.ask(post(address + "/erasure"), coordinator).andExpect(status().isOk());
	}

	private String made(String address, String body, TestPerson person) throws Exception {
		return this.trees.ask(post(address).content(body), person)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

}
