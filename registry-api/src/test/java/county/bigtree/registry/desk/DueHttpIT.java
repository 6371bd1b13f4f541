package county.bigtree.registry.desk;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Which trees a coordinator has to have measured again, under rules by which a
 * measurement is current for two years.
 */
@RegistryTest
class DueHttpIT {

	private static final String TWO_YEARS = "{\"effectiveOn\": \"1800-01-01\", \"currencyYears\": 2, \"oldestFilingMonths\": 1200}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MockMvc mvc;

	@Test
	void listsHoldersAndFirstRanksByTheLastDayOnWhichTheyAreCurrent() throws Exception {
		this.trees.county("dueton", "DUA", TWO_YEARS);
		TestTrees.Filed champion = standing("dueton", 200, today().minusMonths(15));
		standing("dueton", 190, today().minusDays(9));
		TestTrees.Filed third = standing("dueton", 180, today().minusMonths(16));
		standing("dueton", 170, today().minusMonths(17));
		TestPerson coordinator = this.people.coordinator("dueton");
		due("dueton", "", coordinator).andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].tree").value(third.tree()))
			.andExpect(jsonPath("$.items[0].tag").value("DUA-0003"))
			.andExpect(jsonPath("$.items[0].species").value("quercus-alba"))
			.andExpect(jsonPath("$.items[0].rank").value(3))
			.andExpect(jsonPath("$.items[0].title").isEmpty())
			.andExpect(jsonPath("$.items[0].measuredOn").value(today().minusMonths(16).toString()))
			.andExpect(jsonPath("$.items[0].dueOn").value(today().minusMonths(16).plusYears(2).toString()))
			.andExpect(jsonPath("$.items[0].why").value("stale"))
			.andExpect(jsonPath("$.items[1].tree").value(champion.tree()))
			.andExpect(jsonPath("$.items[1].rank").value(1))
			.andExpect(jsonPath("$.items[1].title").value("champion"));
		due("dueton", "?before=" + today(), coordinator).andExpect(jsonPath("$.items.length()").value(0));
		due("dueton", "?before=" + today().plusYears(3), coordinator).andExpect(jsonPath("$.items.length()").value(3));
	}

	@Test
	void putsDamagedTreesFirstWithTheEndOfTheirDaysOfGrace() throws Exception {
		this.trees.county("stormton", "DUB", TWO_YEARS);
		standing("stormton", 200, today().minusMonths(23));
		TestTrees.Filed damaged = standing("stormton", 190, today().minusDays(20));
		TestPerson coordinator = this.people.coordinator("stormton");
		LocalDate lost = today().minusDays(4);
		this.trees
			.ask(post("/api/v1/trees/" + damaged.tree() + "/condition-reports")
				.content("{\"condition\": \"damaged\", \"observedOn\": \"%s\"}".formatted(lost)), coordinator)
			.andExpect(status().isCreated());
		due("stormton", "", coordinator).andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].tree").value(damaged.tree()))
			.andExpect(jsonPath("$.items[0].why").value("damaged"))
			.andExpect(jsonPath("$.items[0].dueOn").value(lost.plusDays(180).toString()))
			.andExpect(jsonPath("$.items[1].why").value("stale"));
		String first = due("stormton", "?limit=1", coordinator).andReturn().getResponse().getContentAsString();
		due("stormton", "?limit=1&cursor=" + JsonPath.read(first, "$.next"), coordinator)
			.andExpect(jsonPath("$.items[0].why").value("stale"))
			.andExpect(jsonPath("$.next").isEmpty());
	}

	@Test
	void listsEqualPointsAtTheThirdRankAllTogether() throws Exception {
		this.trees.county("equalton", "DUC", TWO_YEARS);
		for (int girth : new int[] { 200, 190, 180, 180, 170 }) {
			standing("equalton", girth, today().minusMonths(20));
		}
		String answer = due("equalton", "", this.people.coordinator("equalton")).andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(JsonPath.<List<Integer>>read(answer, "$.items[*].rank")).containsExactly(1, 2, 3, 3);
	}

	@Test
	void expectsRulesThatAreRecordedAndNotYetInForce() throws Exception {
		this.trees.county("strictton", "DUD", TWO_YEARS);
		standing("strictton", 200, today().minusMonths(13));
		TestPerson coordinator = this.people.coordinator("strictton");
		LocalDate strict = today().plusDays(30);
		due("strictton", "?before=" + strict.plusDays(9), coordinator).andExpect(jsonPath("$.items.length()").value(0));
		this.trees
			.ask(post("/api/v1/counties/strictton/rulebooks")
				.content("{\"effectiveOn\": \"%s\", \"currencyYears\": 1}".formatted(strict)), coordinator)
			.andExpect(status().isCreated());
		due("strictton", "?before=" + strict.plusDays(9), coordinator)
			.andExpect(jsonPath("$.items[0].dueOn").value(strict.minusDays(1).toString()));
	}

	@Test
	void isForTheCoordinatorsOfTheCountyOnly() throws Exception {
		this.trees.county("closedton", "DUE");
		this.mvc.perform(get("/api/v1/counties/closedton/due")).andExpect(status().isUnauthorized());
		due("closedton", "", this.people.coordinator("dueton")).andExpect(status().isForbidden());
		due("closedton", "", this.people.verifier("closedton")).andExpect(status().isForbidden());
		due("never-founded", "", this.people.coordinator("never-founded")).andExpect(status().isNotFound());
	}

	@Test
	void refusesDaysOutOfReach() throws Exception {
		this.trees.county("reachton", "DUF");
		TestPerson coordinator = this.people.coordinator("reachton");
		for (String day : new String[] { "1700-01-01", "9999-12-31" }) {
			due("reachton", "?before=" + day, coordinator).andExpect(status().isUnprocessableContent())
				.andExpect(jsonPath("$.errors[0].pointer").value("#/before"));
		}
	}

	private TestTrees.Filed standing(String county, int girthInches, LocalDate measuredOn) throws Exception {
		return this.trees.standing(county, girthInches, measuredOn.toString());
	}

	private ResultActions due(String county, String query, TestPerson person) throws Exception {
		return this.trees.ask(get("/api/v1/counties/" + county + "/due" + query), person);
	}

	private static LocalDate today() {
		return LocalDate.now(ZoneId.of("America/New_York"));
	}

}
