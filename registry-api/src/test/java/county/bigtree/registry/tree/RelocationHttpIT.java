package county.bigtree.registry.tree;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A tree over the line: one coordinator proposes, the other agrees.
 */
@RegistryTest
class RelocationHttpIT {

	private static final String PLACE = """
			{"location": {"latitude": 40.0, "longitude": -86.0, "accuracyMetres": 5}, "county": "%s", "reason": "the stone"}""";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void movesOnlyOnceTheOtherCoordinatorAgrees() throws Exception {
		this.trees.county("lineeast", "LNA");
		this.trees.county("linewest", "LNB");
		TestTrees.Filed filed = this.trees.standing("lineeast", 100, "2024-05-02");
		TestPerson east = this.people.coordinator("lineeast");
		TestPerson west = this.people.coordinator("linewest");
		String answer = this.trees
			.decide("/api/v1/trees/" + filed.tree(), "/location", PLACE.formatted("linewest"), east)
			.andExpect(status().isAccepted())
			.andExpect(jsonPath("$.status").value("waiting"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		String proposal = "/api/v1/relocations/" + JsonPath.<String>read(answer, "$.id");
		this.trees.oaks("lineeast").andExpect(jsonPath("$.items.length()").value(1));
		this.trees.ask(get("/api/v1/counties/linewest/relocations"), west)
			.andExpect(jsonPath("$.items[0].tag").value("LNA-0001"));
		this.trees.ask(get(proposal), west).andExpect(status().isOk());
		this.trees.ask(get("/api/v1/counties/linewest/openings"), west)
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].what").value("place"))
			.andExpect(jsonPath("$.items[0].subject").value(JsonPath.<String>read(answer, "$.id")));
		String agree = "{\"accept\": true, \"reason\": \"seen the stone\"}";
		this.trees.decide(proposal, "/decision", agree, east).andExpect(status().isForbidden());
		this.trees.decide(proposal, "/decision", agree, this.people.coordinator("lineeast"))
			.andExpect(status().isForbidden());
		this.trees.decide(proposal, "/decision?dryRun=true", agree, west)
			.andExpect(jsonPath("$.changes[0].titles.ended[0].why").value("relocated"));
		this.trees.decide(proposal, "/decision", agree, west)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("agreed"));
		this.trees.oaks("lineeast").andExpect(jsonPath("$.items.length()").value(0));
		this.trees.oaks("linewest").andExpect(jsonPath("$.items[0].tree").value(filed.tree()));
		this.trees.oakTitles("lineeast").andExpect(jsonPath("$.items[0].ended").value("relocated"));
		this.trees.decide(proposal, "/decision", agree, west).andExpect(status().isConflict());
	}

	@Test
	void staysWhereItIsIfTheOtherDeclines() throws Exception {
		this.trees.county("linenorth", "LNC");
		this.trees.county("linesouth", "LND");
		TestTrees.Filed filed = this.trees.standing("linenorth", 100, "2024-05-02");
		TestPerson south = this.people.coordinator("linesouth");
		String answer = this.trees
			.decide("/api/v1/trees/" + filed.tree(), "/location", PLACE.formatted("linesouth"), south)
			.andExpect(status().isAccepted())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees
			.decide("/api/v1/relocations/" + JsonPath.<String>read(answer, "$.id"), "/decision",
					"{\"accept\": false, \"reason\": \"it is ours\"}", this.people.coordinator("linenorth"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("declined"));
		this.trees.oaks("linenorth").andExpect(jsonPath("$.items.length()").value(1));
		this.trees
			.decide("/api/v1/trees/" + filed.tree(), "/location", PLACE.formatted("linesouth"),
					this.people.verifier("linenorth"))
			.andExpect(status().isForbidden());
	}

	@Test
	void treesForPracticeStayAmongThemselves() throws Exception {
		this.trees.county("linereal", "LNE");
		this.trees.practiceCounty("linepractice", "LNF");
		TestTrees.Filed filed = this.trees.standing("linereal", 100, "2024-05-02");
		TestTrees.Filed practice = this.trees.standing("linepractice", 100, "2024-05-02");
		this.trees
			.decide("/api/v1/trees/" + filed.tree(), "/location", PLACE.formatted("linepractice"),
					this.people.coordinator("linereal"))
			.andExpect(status().isConflict());
		this.trees
			.decide("/api/v1/trees/" + practice.tree(), "/merge",
					"{\"into\": \"%s\", \"reason\": \"the same\"}".formatted(filed.tree()),
					this.people.coordinator("linereal", "linepractice"))
			.andExpect(status().isConflict());
	}

	@Test
	void aTreeJustNominatedIsSeenByItsPeopleAlone() throws Exception {
		this.trees.county("linesee", "LNI");
		TestTrees.Filed filed = this.trees.nominate("linesee", this.people.volunteer("linesee"), "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		String address = "/api/v1/trees/" + filed.tree();
		this.trees.ask(get(address), filed.filer())
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.accepted").value(false));
		this.trees.ask(get(address), this.people.verifier("linesee")).andExpect(status().isOk());
		this.trees.ask(get(address), this.people.volunteer("linesee")).andExpect(status().isNotFound());
		TestPerson stranger = this.people.coordinator("nowhere-at-all");
		this.trees.ask(get("/api/v1/trees?tag=LNI-0001"), stranger).andExpect(jsonPath("$.items.length()").value(0));
		this.trees.signOff(filed.measurement(), this.people.verifier("linesee"), "{\"verdict\": \"confirmed\"}");
		for (String found : new String[] { "tag=LNI-0001", "query=LNI-00", "county=linesee&query=WHITE",
				"county=linesee&query=q. alba", "county=linesee" }) {
			this.trees.ask(get("/api/v1/trees?" + found), stranger)
				.andExpect(status().isOk())
				.andExpect(jsonPath("$.items.length()").value(found.contains("q.") ? 0 : 1));
		}
	}

	@Test
	void aNominationWaitsWhereItsTreeStandsNow() throws Exception {
		this.trees.county("lineold", "LNG");
		this.trees.county("linenew", "LNH");
		TestTrees.Filed filed = this.trees.nominate("lineold", this.people.volunteer("lineold"), "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		this.trees
			.decide("/api/v1/trees/" + filed.tree(), "/location", PLACE.formatted("linenew"),
					this.people.coordinator("lineold", "linenew"))
			.andExpect(status().is2xxSuccessful());
		TestPerson there = this.people.coordinator("linenew");
		TestPerson here = this.people.coordinator("lineold");
		this.trees.ask(get("/api/v1/counties/linenew/queue"), there)
			.andExpect(jsonPath("$.items[0].kind").value("nomination"));
		this.trees.ask(get("/api/v1/counties/lineold/queue"), here).andExpect(jsonPath("$.items.length()").value(0));
		String address = "/api/v1/nominations/" + filed.nomination();
		this.trees.ask(get(address), here).andExpect(status().isNotFound());
		this.trees.decide(address, "/moves",
				"{\"move\": \"assign\", \"verifier\": \"%s\"}".formatted(this.people.verifier("linenew").id()), there)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("under-review"));
	}

}
