package county.bigtree.registry.standing.web;

import java.util.ArrayList;
import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * How the trees of a species rank over several counties. A tree of so many inches has 90
 * points more (girth + height + a quarter of the spread: common practice, no source).
 */
@RegistryTest
class RollUpHttpIT {

	private static final String OAKS = "/api/v1/species/quercus-alba/standing";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MockMvc mvc;

	@Test
	void ranksByPointsWithTheCountyOfEachAndKeepsNoTitles() throws Exception {
		this.trees.county("rollnorth", "RUA");
		this.trees.county("rollsouth", "RUB");
		TestTrees.Filed second = this.trees.standing("rollnorth", 150, "2026-05-02");
		TestTrees.Filed first = this.trees.standing("rollsouth", 170, "2026-05-02");
		TestTrees.Filed equal = this.trees.standing("rollsouth", 150, "2026-05-02");
		TestTrees.Filed last = this.trees.standing("rollnorth", 140, "2026-05-02");
		String answer = body(ask("?counties=rollsouth,rollnorth").andExpect(status().isOk())
			.andExpect(jsonPath("$.species").value("quercus-alba"))
			.andExpect(jsonPath("$.counties[0]").value("rollnorth"))
			.andExpect(jsonPath("$.counties[1]").value("rollsouth"))
			.andExpect(jsonPath("$.practice").value(false))
			.andExpect(jsonPath("$.total").value(4))
			.andExpect(jsonPath("$.recordedThrough").isString())
			.andExpect(jsonPath("$.items[0].county").value("rollsouth"))
			.andExpect(jsonPath("$.items[0].tree").value(first.tree()))
			.andExpect(jsonPath("$.items[0].tag").value("RUB-0001"))
			.andExpect(jsonPath("$.items[0].points").value(260.0))
			.andExpect(jsonPath("$.items[0].behindLeader").value(0.0))
			.andExpect(jsonPath("$.items[0].lead").value(20.0))
			.andExpect(jsonPath("$.items[0].stale").value(false))
			.andExpect(jsonPath("$.items[0].title").doesNotExist())
			.andExpect(jsonPath("$.items[3].county").value("rollnorth"))
			.andExpect(jsonPath("$.items[3].tree").value(last.tree()))
			.andExpect(jsonPath("$.items[3].behindLeader").value(30.0))
			.andExpect(jsonPath("$.items[3].lead").isEmpty())
			.andExpect(jsonPath("$.next").isEmpty()));
		assertThat(JsonPath.<List<Integer>>read(answer, "$.items[*].rank")).containsExactly(1, 2, 2, 4);
		assertThat(JsonPath.<List<String>>read(answer, "$.items[*].tree")).contains(second.tree(), equal.tree());
		ask("?counties=rollnorth").andExpect(jsonPath("$.total").value(2))
			.andExpect(jsonPath("$.items[0].tree").value(second.tree()));
	}

	/**
	 * Its pages are those of the ranking as it was at the first, also if a tree comes in
	 * between.
	 */
	@Test
	void comesPageByPageAsItWasAtTheFirst() throws Exception {
		this.trees.county("pagenorth", "RUC");
		this.trees.county("pagesouth", "RUD");
		List<String> filed = new ArrayList<>();
		filed.add(this.trees.standing("pagenorth", 150, "2026-05-02").tree());
		filed.add(this.trees.standing("pagesouth", 149, "2026-05-02").tree());
		filed.add(this.trees.standing("pagenorth", 148, "2026-05-02").tree());
		filed.add(this.trees.standing("pagesouth", 147, "2026-05-02").tree());
		String first = body(ask("?counties=pagenorth,pagesouth&limit=3").andExpect(header().exists("Link"))
			.andExpect(jsonPath("$.items[2].lead").value(1.0)));
		this.trees.standing("pagesouth", 200, "2026-05-02");
		String second = body(
				ask("?limit=3&cursor=" + JsonPath.read(first, "$.next")).andExpect(jsonPath("$.total").value(4))
					.andExpect(jsonPath("$.items[0].rank").value(4))
					.andExpect(jsonPath("$.items[0].behindLeader").value(3.0))
					.andExpect(jsonPath("$.next").isEmpty()));
		List<String> found = new ArrayList<>(JsonPath.<List<String>>read(first, "$.items[*].tree"));
		found.addAll(JsonPath.<List<String>>read(second, "$.items[*].tree"));
		assertThat(found).isEqualTo(filed);
		ask("?counties=pagenorth,pagesouth").andExpect(jsonPath("$.items[0].points").value(290.0));
	}

	@Test
	void goesByItsOwnRulesAndNotByTheCounties() throws Exception {
		this.trees.county("rulesnorth", "RUE",
				"{\"effectiveOn\": \"1800-01-01\", \"currencyYears\": 1, \"oldestFilingMonths\": 1200}");
		this.trees.standing("rulesnorth", 150, "2025-01-02");
		this.trees.oaks("rulesnorth").andExpect(jsonPath("$.items[0].stale").value(true));
		ask("?counties=rulesnorth").andExpect(jsonPath("$.items[0].stale").value(false));
	}

	@Test
	void takesAllCountiesButThoseForPracticeWhereNoneIsNamed() throws Exception {
		this.trees.county("allnorth", "RUF");
		this.trees.ask(post("/api/v1/counties").content("""
				{"key": "tryout", "name": "Tryout", "state": "Nowhere", "timeZone": "America/New_York",
				 "tagPrefix": "RUG", "practice": true}"""), this.people.administrator())
			.andExpect(status().isCreated());
		TestTrees.Filed practised = this.trees.standing("tryout", 160, "2026-05-02");
		String answer = body(ask("?limit=500").andExpect(jsonPath("$.practice").value(false)));
		assertThat(JsonPath.<List<String>>read(answer, "$.counties")).contains("allnorth").doesNotContain("tryout");
		assertThat(JsonPath.<List<String>>read(answer, "$.items[*].tree")).doesNotContain(practised.tree());
		ask("?counties=tryout,allnorth").andExpect(jsonPath("$.practice").value(true))
			.andExpect(jsonPath("$.items[0].tree").value(practised.tree()));
	}

	/**
	 * The tree that is kept has its score from a visit to the one that was merged.
	 */
	@Test
	void namesAKeptTreeByItsOwnTag() throws Exception {
		this.trees.county("mergenorth", "RUH");
		TestTrees.Filed kept = this.trees.standing("mergenorth", 150, "2026-05-02");
		TestTrees.Filed merged = this.trees.standing("mergenorth", 152, "2026-06-02");
		this.trees
			.decide("/api/v1/trees/" + merged.tree(), "/merge",
					"{\"into\": \"%s\", \"reason\": \"one tree\"}".formatted(kept.tree()),
					this.people.coordinator("mergenorth"))
			.andExpect(status().is2xxSuccessful());
		for (ResultActions answer : List.of(this.trees.oaks("mergenorth"), ask("?counties=mergenorth"))) {
			answer.andExpect(jsonPath("$.total").value(1))
				.andExpect(jsonPath("$.items[0].tree").value(kept.tree()))
				.andExpect(jsonPath("$.items[0].tag").value("RUH-0001"))
				.andExpect(jsonPath("$.items[0].measurement").value(merged.measurement()))
				.andExpect(jsonPath("$.items[0].points").value(242.0));
		}
	}

	@Test
	void refusesWhatItDoesNotKnow() throws Exception {
		this.mvc.perform(get("/api/v1/species/quercus-nulla/standing")).andExpect(status().isNotFound());
		ask("?counties=nowhere-at-all").andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/counties"));
		ask("?county=rollnorth").andExpect(status().isBadRequest());
		ask("?cursor=abc").andExpect(status().isBadRequest());
	}

	private ResultActions ask(String query) throws Exception {
		return this.mvc.perform(get(OAKS + query));
	}

	private static String body(ResultActions result) throws Exception {
		return result.andReturn().getResponse().getContentAsString();
	}

}
