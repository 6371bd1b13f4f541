package county.bigtree.registry.desk;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.TestTrees.Filed;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Entries that are likely one tree, by their exact places.
 */
@RegistryTest
class DuplicatesHttpIT {

	private static final String LIST = "/api/v1/counties/{county}/likely-duplicates";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void leavesOutWhatWasToldApartUntilOneStandsElsewhere() throws Exception {
		this.trees.county("toldapart", "DUZ");
		Filed first = this.trees.standing("toldapart", 100, "2024-05-02");
		Filed second = this.trees.standing("toldapart", 101, "2024-05-03");
		TestPerson coordinator = this.people.coordinator("toldapart");
		String path = "/api/v1/trees/" + second.tree();
		this.trees
			.decide(path, "/distinctions", "{\"from\": \"%s\", \"reason\": \"no\"}".formatted(second.tree()),
					coordinator)
			.andExpect(status().isUnprocessableContent());
		String apart = "{\"from\": \"%s\", \"reason\": \"two stems, eight paces apart\"}".formatted(first.tree());
		this.trees.decide(path, "/distinctions", apart, coordinator).andExpect(status().isOk());
		this.trees.decide(path, "/distinctions", apart, coordinator).andExpect(status().isConflict());
		this.trees.ask(get(LIST, "toldapart"), coordinator).andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(get("/api/v1/counties/toldapart/journal?limit=1"), coordinator)
			.andExpect(jsonPath("$.items[0].kind").value("told-apart"))
			.andExpect(jsonPath("$.items[0].reason").value("two stems, eight paces apart"))
			.andExpect(jsonPath("$.items[0].trees.length()").value(2));
		this.trees.ask(get("/api/v1/trees/" + first.tree() + "/story"), coordinator)
			.andExpect(jsonPath("$.items[*].facts[?(@.kind == 'told-apart')].reason")
				.value("two stems, eight paces apart"));
		this.trees.ask(get("/api/v1/trees/" + first.tree() + "/story"), this.people.volunteer("toldapart"))
			.andExpect(jsonPath("$.items[*].facts[?(@.kind == 'told-apart')]").isEmpty());
		this.trees.decide(path, "/visibility", "{\"visibility\": \"county\", \"reason\": \"as asked\"}", coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get(LIST, "toldapart"), coordinator).andExpect(jsonPath("$.items.length()").value(0));
		this.trees.decide(path, "/location",
				"""
						{"location": {"latitude": 40.10001, "longitude": -86.2, "accuracyMetres": 8}, "reason": "read again"}""",
				coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get(LIST, "toldapart"), coordinator).andExpect(jsonPath("$.items.length()").value(1));
		this.trees.decide(path, "/distinctions", apart, coordinator).andExpect(status().isOk());
		this.trees.ask(get(LIST, "toldapart"), coordinator).andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void pairsEntriesOfOneSpeciesWithinTheirJointAccuracy() throws Exception {
		this.trees.county("duplicates", "DUP");
		Filed first = this.trees.standing("duplicates", 100, "2024-05-02");
		Filed second = this.trees.standing("duplicates", 180, "2024-05-03");
		Filed other = this.trees.nominate("duplicates", this.people.volunteer("duplicates"), "quercus-rubra",
				TestTrees.measurement(100, "2024-05-02"));
		TestPerson coordinator = this.people.coordinator("duplicates");
		this.trees.ask(get(LIST, "duplicates"), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].metres").value(0.0))
			// Both are known to 8 m: the root of the sum of the squares is 11.31 m.
			.andExpect(jsonPath("$.items[0].jointAccuracyMetres").value(11.3))
			.andExpect(jsonPath("$.items[0].first.waiting").value(false));
		this.trees.ask(get(LIST + "?tree={tree}", "duplicates", other.tree()), coordinator)
			.andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(get(LIST + "?tree={tree}", "duplicates", first.tree()), coordinator)
			.andExpect(jsonPath("$.items.length()").value(1));
		// 0.0002 degrees of latitude are 22.2 m, more than 11.3.
		this.trees.decide("/api/v1/trees/" + second.tree(), "/location", """
				{"location": {"latitude": 40.1002, "longitude": -86.2, "accuracyMetres": 8}, "reason": "read again"}""",
				coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get(LIST, "duplicates"), coordinator).andExpect(jsonPath("$.items.length()").value(0));
		// Known to 60 m only they may be one: 60.5 m jointly.
		this.trees.decide("/api/v1/trees/" + second.tree(), "/location",
				"""
						{"location": {"latitude": 40.1002, "longitude": -86.2, "accuracyMetres": 60}, "reason": "under the crown"}""",
				coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get(LIST, "duplicates"), coordinator).andExpect(jsonPath("$.items[0].metres").value(22.2));
		// Where the places are rough, the girths must be alike: 100 in and 180 in are
		// not.
		this.trees.decide("/api/v1/trees/" + second.tree(), "/location",
				"""
						{"location": {"latitude": 40.1002, "longitude": -86.2, "accuracyMetres": 300}, "reason": "from the road"}""",
				coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get(LIST, "duplicates"), coordinator).andExpect(jsonPath("$.items.length()").value(0));
	}

}
