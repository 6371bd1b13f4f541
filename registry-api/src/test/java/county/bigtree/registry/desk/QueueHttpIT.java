package county.bigtree.registry.desk;

import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.hamcrest.Matchers;
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
 * What waits for a coordinator. A tree of so many inches has 90 points more (girth +
 * height + a quarter of the spread: common practice, no source); titles are shared within
 * 5 points.
 */
@RegistryTest
class QueueHttpIT {

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MockMvc mvc;

	@Test
	void putsWhatWouldTakeATitleFirstAndThenWhatHasWaitedLongest() throws Exception {
		this.trees.county("queueton", "QUA");
		this.trees.standing("queueton", 200, "2026-05-02");
		TestTrees.Filed small = nominate("queueton", 150);
		TestTrees.Filed near = nominate("queueton", 195);
		TestTrees.Filed behind = nominate("queueton", 194);
		TestTrees.Filed large = nominate("queueton", 210);
		TestPerson coordinator = this.people.coordinator("queueton");
		move(large, "{\"move\": \"return\", \"reason\": \"which fork?\"}", coordinator);
		move(nominate("queueton", 220), "{\"move\": \"decline\", \"reason\": \"planted in a tub\"}", coordinator);
		queue("queueton", "", coordinator).andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(4))
			.andExpect(jsonPath("$.items[0].kind").value("nomination"))
			.andExpect(jsonPath("$.items[0].id").value(near.nomination()))
			.andExpect(jsonPath("$.items[0].tree").value(near.tree()))
			.andExpect(jsonPath("$.items[0].tag").value("QUA-0003"))
			.andExpect(jsonPath("$.items[0].species").value("quercus-alba"))
			.andExpect(jsonPath("$.items[0].status").value("submitted"))
			.andExpect(jsonPath("$.items[0].points").value(285.0))
			.andExpect(jsonPath("$.items[0].wouldHold").value("co-champion"))
			// 285 and 300 points against the leader's 290: the nearer to it, the nearer
			// to 0.5.
			.andExpect(jsonPath("$.items[0].largestProbability").value(Matchers.lessThan(0.01)))
			.andExpect(jsonPath("$.items[1].largestProbability").value(Matchers.greaterThan(0.99)))
			.andExpect(jsonPath("$.items[0].title").isEmpty())
			.andExpect(jsonPath("$.items[0].since").isString())
			.andExpect(jsonPath("$.items[1].id").value(large.nomination()))
			.andExpect(jsonPath("$.items[1].status").value("returned"))
			.andExpect(jsonPath("$.items[1].wouldHold").value("champion"))
			.andExpect(jsonPath("$.items[2].id").value(small.nomination()))
			.andExpect(jsonPath("$.items[2].wouldHold").isEmpty())
			.andExpect(jsonPath("$.items[3].id").value(behind.nomination()))
			.andExpect(jsonPath("$.items[3].wouldHold").isEmpty());
	}

	@Test
	void comesPageByPageInThatOrder() throws Exception {
		this.trees.county("pageaton", "QUB");
		this.trees.standing("pageaton", 200, "2026-05-02");
		List<String> filed = List.of(nominate("pageaton", 150).nomination(), nominate("pageaton", 140).nomination(),
				nominate("pageaton", 230).nomination());
		TestPerson coordinator = this.people.coordinator("pageaton");
		String first = answer(queue("pageaton", "?limit=2", coordinator));
		String second = answer(queue("pageaton", "?limit=2&cursor=" + JsonPath.read(first, "$.next"), coordinator));
		assertThat(JsonPath.<List<String>>read(first, "$.items[*].id")).containsExactly(filed.get(2), filed.get(0));
		assertThat(JsonPath.<List<String>>read(second, "$.items[*].id")).containsExactly(filed.get(1));
		assertThat(JsonPath.<String>read(second, "$.next")).isNull();
	}

	/**
	 * The champion's 290 points would give way to 279, which share the title of the 282
	 * that then lead.
	 */
	@Test
	void weighsARemeasurementInPlaceOfTheTreesOwnScore() throws Exception {
		this.trees.county("againton", "QUC");
		TestTrees.Filed champion = this.trees.standing("againton", 200, "2026-05-02");
		this.trees.standing("againton", 192, "2026-05-02");
		String measurement = remeasure("againton", champion, 189, "2026-06-02");
		TestPerson coordinator = this.people.coordinator("againton");
		queue("againton", "", coordinator).andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].kind").value("measurement"))
			.andExpect(jsonPath("$.items[0].id").value(measurement))
			.andExpect(jsonPath("$.items[0].tree").value(champion.tree()))
			.andExpect(jsonPath("$.items[0].status").value("filed"))
			.andExpect(jsonPath("$.items[0].points").value(279.0))
			.andExpect(jsonPath("$.items[0].wouldHold").value("co-champion"))
			.andExpect(jsonPath("$.items[0].title").value("champion"));
		this.trees.signOff(measurement, this.people.verifier("againton"), CONFIRMED).andExpect(status().isCreated());
		queue("againton", "", coordinator).andExpect(jsonPath("$.items.length()").value(0));
		this.trees.oaks("againton").andExpect(jsonPath("$.items[1].title").value("co-champion"));
	}

	@Test
	void givesNoTitleToAnOlderVisitThanTheOneThatCounts() throws Exception {
		this.trees.county("lateton", "QUD");
		this.trees.standing("lateton", 200, "2026-05-02");
		TestTrees.Filed second = this.trees.standing("lateton", 150, "2026-05-02");
		remeasure("lateton", second, 230, "2026-04-02");
		queue("lateton", "", this.people.coordinator("lateton"))
			.andExpect(jsonPath("$.items[0].tree").value(second.tree()))
			.andExpect(jsonPath("$.items[0].points").value(320.0))
			.andExpect(jsonPath("$.items[0].wouldHold").isEmpty());
	}

	@Test
	void keepsAMeasurementThatWasNotConfirmedUntilItIsSetAside() throws Exception {
		this.trees.county("doubton", "QUE");
		TestTrees.Filed champion = this.trees.standing("doubton", 200, "2026-05-02");
		String measurement = remeasure("doubton", champion, 260, "2026-06-02");
		this.trees
			.signOff(measurement, this.people.verifier("doubton"),
					"{\"verdict\": \"not-confirmed\", \"remarks\": \"two stems\"}")
			.andExpect(status().isCreated());
		TestPerson coordinator = this.people.coordinator("doubton");
		queue("doubton", "", coordinator).andExpect(jsonPath("$.items[0].id").value(measurement))
			.andExpect(jsonPath("$.items[0].status").value("not-confirmed"));
		this.trees
			.decide("/api/v1/measurements/" + measurement, "/setting-aside", "{\"reason\": \"two stems\"}", coordinator)
			.andExpect(status().is2xxSuccessful());
		queue("doubton", "", coordinator).andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void saysWhichMeasurementsAreAssignedAndDropsWhatWasWithdrawn() throws Exception {
		this.trees.county("moveton", "QUL");
		TestTrees.Filed tree = this.trees.standing("moveton", 200, "2026-05-02");
		TestPerson filer = this.people.volunteer("moveton");
		TestPerson coordinator = this.people.coordinator("moveton");
		String address = "/api/v1/measurements/"
				+ id(this.trees.ask(post("/api/v1/trees/" + tree.tree() + "/measurements")
					.content(TestTrees.measurement(210, "2026-06-02")), filer));
		this.trees
			.decide(address, "/moves",
					"{\"move\": \"assign\", \"verifier\": \"%s\"}".formatted(this.people.verifier("moveton").id()),
					coordinator)
			.andExpect(status().isOk());
		queue("moveton", "", coordinator).andExpect(jsonPath("$.items[0].status").value("assigned"))
			.andExpect(jsonPath("$.items[0].wouldHold").value("champion"));
		this.trees.decide(address, "/moves", "{\"move\": \"withdraw\", \"reason\": \"misread\"}", filer)
			.andExpect(status().isOk());
		queue("moveton", "", coordinator).andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void holdsProposalsOverTheLineInBothCounties() throws Exception {
		this.trees.county("eastaton", "QUM");
		this.trees.county("westaton", "QUN");
		TestTrees.Filed tree = this.trees.standing("eastaton", 200, "2026-05-02");
		TestPerson east = this.people.coordinator("eastaton");
		TestPerson west = this.people.coordinator("westaton");
		String answer = answer(this.trees.decide("/api/v1/trees/" + tree.tree(), "/location", """
				{"location": {"latitude": 40.2, "longitude": -86.2, "accuracyMetres": 5}, "county": "westaton",
				 "reason": "the line runs south of it"}""", east).andExpect(status().isAccepted()));
		String proposal = JsonPath.read(answer, "$.id");
		for (TestPerson coordinator : List.of(east, west)) {
			queue((coordinator == east) ? "eastaton" : "westaton", "", coordinator)
				.andExpect(jsonPath("$.items.length()").value(1))
				.andExpect(jsonPath("$.items[0].kind").value("relocation"))
				.andExpect(jsonPath("$.items[0].id").value(proposal))
				.andExpect(jsonPath("$.items[0].tree").value(tree.tree()))
				.andExpect(jsonPath("$.items[0].title").value("champion"));
		}
		this.trees
			.decide("/api/v1/relocations/" + proposal, "/decision", "{\"accept\": false, \"reason\": \"it is theirs\"}",
					west)
			.andExpect(status().isOk());
		queue("westaton", "", west).andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(get("/api/v1/counties/eastaton/journal?limit=1"), east)
			.andExpect(jsonPath("$.items[0].kind").value("relocation-declined"))
			.andExpect(jsonPath("$.items[0].reason").value("it is theirs"))
			.andExpect(jsonPath("$.items[0].trees[0].tree").value(tree.tree()));
	}

	@Test
	void waitsForAllTheSignOffsThatTheRulesAskFor() throws Exception {
		this.trees.county("queuetwice", "QUF", "{\"effectiveOn\": \"1800-01-01\", \"requiredSignOffs\": 2}");
		TestTrees.Filed filed = nominate("queuetwice", 100);
		TestPerson coordinator = this.people.coordinator("queuetwice");
		this.trees.signOff(filed.measurement(), this.people.verifier("queuetwice"), CONFIRMED)
			.andExpect(status().isCreated());
		queue("queuetwice", "", coordinator).andExpect(jsonPath("$.items[0].status").value("under-review"))
			.andExpect(jsonPath("$.items[0].wouldHold").value("champion"));
		this.trees.signOff(filed.measurement(), this.people.verifier("queuetwice"), CONFIRMED)
			.andExpect(status().isCreated());
		queue("queuetwice", "", coordinator).andExpect(jsonPath("$.items.length()").value(0));
		String again = remeasure("queuetwice", filed, 110, "2026-06-02");
		this.trees.signOff(again, this.people.verifier("queuetwice"), CONFIRMED).andExpect(status().isCreated());
		queue("queuetwice", "", coordinator).andExpect(jsonPath("$.items[0].id").value(again));
	}

	@Test
	void holdsConditionReportsUntilTheyAreDecidedOn() throws Exception {
		this.trees.county("fallton", "QUG");
		nominate("fallton", 50);
		TestTrees.Filed champion = this.trees.standing("fallton", 200, "2026-05-02");
		String report = report(champion, "fallen", "2026-06-01", this.people.volunteer("fallton"));
		TestPerson coordinator = this.people.coordinator("fallton");
		queue("fallton", "", coordinator).andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].kind").value("condition-report"))
			.andExpect(jsonPath("$.items[0].id").value(report))
			.andExpect(jsonPath("$.items[0].status").value("fallen"))
			.andExpect(jsonPath("$.items[0].title").value("champion"))
			.andExpect(jsonPath("$.items[0].points").isEmpty());
		this.trees
			.decide("/api/v1/condition-reports/" + report, "/decision", "{\"accept\": false, \"reason\": \"another\"}",
					coordinator)
			.andExpect(status().isOk());
		queue("fallton", "", coordinator).andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].kind").value("nomination"));
	}

	@Test
	void bringsATreeThatWasNotFoundTwiceUntilItIsSeenAgain() throws Exception {
		this.trees.county("hideton", "QUH");
		TestTrees.Filed tree = this.trees.standing("hideton", 200, "2026-05-02");
		TestPerson coordinator = this.people.coordinator("hideton");
		report(tree, "not-found", "2026-06-01", coordinator);
		queue("hideton", "", coordinator).andExpect(jsonPath("$.items.length()").value(0));
		String second = report(tree, "not-found", "2026-07-01", coordinator);
		queue("hideton", "", coordinator).andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].kind").value("not-found"))
			.andExpect(jsonPath("$.items[0].id").value(second))
			.andExpect(jsonPath("$.items[0].tree").value(tree.tree()))
			.andExpect(jsonPath("$.items[0].title").value("champion"));
		report(tree, "upright", "2026-07-02", coordinator);
		queue("hideton", "", coordinator).andExpect(jsonPath("$.items.length()").value(0));
		report(tree, "not-found", "2026-08-01", coordinator);
		queue("hideton", "", coordinator).andExpect(jsonPath("$.items.length()").value(0));
		report(tree, "not-found", "2026-09-01", coordinator);
		queue("hideton", "", coordinator).andExpect(jsonPath("$.items.length()").value(1));
		report(tree, "removed", "2026-09-02", coordinator);
		queue("hideton", "", coordinator).andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void followsATreeToTheCountyWhereItStands() throws Exception {
		this.trees.county("fromton", "QUI");
		this.trees.county("toton", "QUJ");
		TestTrees.Filed tree = this.trees.standing("fromton", 200, "2026-05-02");
		String measurement = remeasure("fromton", tree, 210, "2026-06-02");
		TestPerson both = this.people.with(CountyRole.of("fromton", Role.COORDINATOR),
				CountyRole.of("toton", Role.COORDINATOR));
		this.trees.decide("/api/v1/trees/" + tree.tree(), "/location", """
				{"location": {"latitude": 40.2, "longitude": -86.2, "accuracyMetres": 5}, "county": "toton",
				 "reason": "the line runs south of it"}""", both).andExpect(status().is2xxSuccessful());
		queue("fromton", "", both).andExpect(jsonPath("$.items.length()").value(0));
		queue("toton", "", both).andExpect(jsonPath("$.items[0].id").value(measurement))
			.andExpect(jsonPath("$.items[0].wouldHold").value("champion"));
	}

	@Test
	void isForTheCoordinatorsOfTheCountyOnly() throws Exception {
		this.trees.county("lockton", "QUK");
		this.mvc.perform(get("/api/v1/counties/lockton/queue")).andExpect(status().isUnauthorized());
		queue("lockton", "", this.people.coordinator("queueton")).andExpect(status().isForbidden());
		queue("lockton", "", this.people.verifier("lockton")).andExpect(status().isForbidden());
		queue("not-begun", "", this.people.coordinator("not-begun")).andExpect(status().isNotFound());
	}

	private TestTrees.Filed nominate(String county, int girthInches) throws Exception {
		return this.trees.nominate(county, this.people.volunteer(county), "quercus-alba",
				TestTrees.measurement(girthInches, "2026-05-03"));
	}

	private String remeasure(String county, TestTrees.Filed tree, int girthInches, String on) throws Exception {
		return id(this.trees.ask(
				post("/api/v1/trees/" + tree.tree() + "/measurements").content(TestTrees.measurement(girthInches, on)),
				this.people.volunteer(county)));
	}

	private String report(TestTrees.Filed tree, String condition, String on, TestPerson person) throws Exception {
		return id(this.trees.ask(post("/api/v1/trees/" + tree.tree() + "/condition-reports")
			.content("{\"condition\": \"%s\", \"observedOn\": \"%s\"}".formatted(condition, on)), person));
	}

	private void move(TestTrees.Filed filed, String body, TestPerson person) throws Exception {
		this.trees.decide("/api/v1/nominations/" + filed.nomination(), "/moves", body, person)
			.andExpect(status().isOk());
	}

	private ResultActions queue(String county, String query, TestPerson person) throws Exception {
		return this.trees.ask(get("/api/v1/counties/" + county + "/queue" + query), person);
	}

	private static String id(ResultActions created) throws Exception {
		return JsonPath.read(answer(created.andExpect(status().isCreated())), "$.id");
	}

	private static String answer(ResultActions result) throws Exception {
		return result.andReturn().getResponse().getContentAsString();
	}

}
