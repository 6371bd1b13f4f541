package county.bigtree.registry.handover;

import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Who takes a county over reads in one account what is open in it and by which rules.
 */
@RegistryTest
class HandoverHttpIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void tellsWhatIsOpenAndByWhichRules() throws Exception {
		this.trees.county("handland", "HOA");
		TestTrees.Filed standing = this.trees.standing("handland", 100, "2024-05-02");
		this.trees.nominate("handland", this.people.volunteer("handland"), "quercus-alba",
				TestTrees.measurement(140, "2024-05-02"));
		TestPerson coordinator = this.people.coordinator("handland");
		TestPerson verifier = this.people.verifier("handland");
		this.trees.ask(post("/api/v1/counties/handland/rulebooks").content(
				"""
						{"effectiveOn": "2999-01-01", "currencyYears": 7, "titleNeedsCoordinator": true,
						 "requiredSignOffsForTitle": 2, "titleMethods": ["tape", "tangent"], "answerDays": 21, "reason": "as the committee decided"}"""),
				coordinator)
			.andExpect(status().isCreated());
		this.trees.ask(post("/api/v1/visits").content("""
				{"tree": "%s", "purpose": "doubt", "byWhen": "2999-06-30", "notes": "dog at the gate"}"""
			.formatted(standing.tree())), verifier).andExpect(status().isCreated());
		this.trees.decide("/api/v1/trees/" + standing.tree(), "/stem-rulings",
				"""
						{"form": "forked-below", "unionHeightFeet": 3.5, "scoredStem": "the western stem", "reason": "the piths meet low"}""",
				coordinator)
			.andExpect(status().isOk());
		this.trees
			.ask(post("/api/v1/counties/handland/letters")
				.content("{\"about\": \"tip\", \"text\": \"a bigger one by the mill\", \"contact\": \"555 0100\"}"),
					verifier)
			.andExpect(status().isCreated());
		String told = this.trees.ask(get("/api/v1/counties/handland/handover"), coordinator)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(items(told, "Waiting")).singleElement()
			.asString()
			.contains("Nomination", "white oak", "230 points", "would be champion");
		assertThat(items(told, "Visits")).singleElement()
			.asString()
			.contains("doubt", verifier.creditName(), "dog at the gate");
		assertThat(items(told, "Letters")).containsExactly("a tip: a bigger one by the mill");
		assertThat(told).doesNotContain("555 0100");
		assertThat(items(told, "Rulings")).singleElement()
			.asString()
			.contains("scored as forked below", "the western stem", "the piths meet low");
		assertThat(items(told, "Rulebooks")).hasSize(2)
			.first()
			.asString()
			.contains("current for 7 years", "2 for a title", "waits for a coordinator's yes",
					"only by figures taken with: t", "answered within 21 days", "Because: as the committee decided");
		this.trees.ask(get("/counties/handland/handover"), coordinator)
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("dog at the gate")))
			.andExpect(content().string(containsString("Rulings on single trees")));
	}

	@Test
	void isForTheCountysCoordinatorsAlone() throws Exception {
		this.trees.county("handclosed", "HOB");
		for (String address : List.of("/api/v1/counties/handclosed/handover", "/counties/handclosed/handover")) {
			this.trees.ask(get(address), this.people.verifier("handclosed")).andExpect(status().isForbidden());
			this.trees.ask(get(address), this.people.coordinator("handland")).andExpect(status().isForbidden());
			this.trees.ask(get(address), this.people.administrator()).andExpect(status().isForbidden());
		}
	}

	private static List<String> items(String told, String heading) {
		return JsonPath.read(told, "$.sections[?(@.heading =~ /" + heading + ".*/)].items[*].text");
	}

}
