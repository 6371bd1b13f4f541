package county.bigtree.registry.journal.web;

import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What a coordinator reads of who changed what, when and why.
 */
@RegistryTest
class JournalHttpIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void tellsEveryChangeNewestFirstWithWhoWhatAndWhy() throws Exception {
		this.trees.county("journalton", "JNA");
		TestTrees.Filed filed = this.trees.standing("journalton", 100, "2026-05-02");
		TestPerson coordinator = this.people.coordinator("journalton");
		this.trees
			.decide("/api/v1/measurements/" + filed.measurement(), "/setting-aside",
					"{\"reason\": \"the tape slipped\"}", coordinator)
			.andExpect(status().is2xxSuccessful());
		journal("journalton", "", coordinator).andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(4))
			.andExpect(jsonPath("$.items[0].seq").value(4))
			.andExpect(jsonPath("$.items[0].kind").value("set-aside"))
			.andExpect(jsonPath("$.items[0].who").value(coordinator.creditName()))
			.andExpect(jsonPath("$.items[0].reason").value("the tape slipped"))
			.andExpect(jsonPath("$.items[0].treeCount").value(1))
			.andExpect(jsonPath("$.items[0].trees[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[0].trees[0].tag").value("JNA-0001"))
			.andExpect(jsonPath("$.items[0].recordedAt").isString())
			.andExpect(jsonPath("$.items[1].kind").value("signed-off"))
			.andExpect(jsonPath("$.items[1].reason").isEmpty())
			.andExpect(jsonPath("$.items[1].trees[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[2].kind").value("nominated"))
			.andExpect(jsonPath("$.items[2].who").value(filed.filer().creditName()))
			.andExpect(jsonPath("$.items[2].trees.length()").value(1))
			.andExpect(jsonPath("$.items[3].kind").value("county-founded"))
			.andExpect(jsonPath("$.items[3].trees.length()").value(0))
			.andExpect(jsonPath("$.next").isEmpty());
	}

	@Test
	void goesThroughEveryChangeOncePageByPage() throws Exception {
		this.trees.county("pagerton", "JNB");
		this.trees.standing("pagerton", 100, "2026-05-02");
		TestPerson coordinator = this.people.coordinator("pagerton");
		String first = journal("pagerton", "?limit=2", coordinator).andExpect(header().exists("Link"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		String second = journal("pagerton", "?limit=2&cursor=" + JsonPath.read(first, "$.next"), coordinator)
			.andExpect(jsonPath("$.next").isEmpty())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(JsonPath.<List<Integer>>read(first, "$.items[*].seq")).containsExactly(3, 2);
		assertThat(JsonPath.<List<Integer>>read(second, "$.items[*].seq")).containsExactly(1);
	}

	@Test
	void tellsBothCountiesOfATreeThatWentFromOneToTheOther() throws Exception {
		this.trees.county("leaveton", "JNC");
		this.trees.county("arriveton", "JND");
		TestTrees.Filed filed = this.trees.standing("leaveton", 100, "2026-05-02");
		TestPerson both = this.people.with(CountyRole.of("leaveton", Role.COORDINATOR),
				CountyRole.of("arriveton", Role.COORDINATOR));
		this.trees.decide("/api/v1/trees/" + filed.tree(), "/location", """
				{"location": {"latitude": 40.2, "longitude": -86.2, "accuracyMetres": 5}, "county": "arriveton",
				 "reason": "the line runs south of it"}""", both).andExpect(status().is2xxSuccessful());
		for (String county : new String[] { "leaveton", "arriveton" }) {
			journal(county, "?limit=1", both).andExpect(jsonPath("$.items[0].kind").value("relocated"))
				.andExpect(jsonPath("$.items[0].who").value(both.creditName()))
				.andExpect(jsonPath("$.items[0].trees[0].tree").value(filed.tree()))
				.andExpect(jsonPath("$.items[0].reason").value("the line runs south of it"));
		}
	}

	@Test
	void namesTheTreeOfAReportThatWasDecidedOnAndOfASignOffThatWasRevoked() throws Exception {
		this.trees.county("indirecton", "JNE");
		TestTrees.Filed filed = this.trees.nominate("indirecton", this.people.volunteer("indirecton"), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		String signOff = id(this.trees.signOff(filed.measurement(), this.people.verifier("indirecton"),
				"{\"verdict\": \"confirmed\"}"));
		TestPerson coordinator = this.people.coordinator("indirecton");
		this.trees
			.decide("/api/v1/sign-offs/" + signOff, "/revocation", "{\"reason\": \"related to the finder\"}",
					coordinator)
			.andExpect(status().is2xxSuccessful());
		String report = id(this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/condition-reports")
			.content("{\"condition\": \"fallen\", \"observedOn\": \"2026-06-01\"}"), filed.filer()));
		this.trees
			.decide("/api/v1/condition-reports/" + report, "/decision",
					"{\"accept\": false, \"reason\": \"another tree\"}", coordinator)
			.andExpect(status().isOk());
		journal("indirecton", "?limit=3", coordinator).andExpect(jsonPath("$.items[0].kind").value("condition-decided"))
			.andExpect(jsonPath("$.items[0].reason").value("another tree"))
			.andExpect(jsonPath("$.items[0].trees[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[2].kind").value("revoked"))
			.andExpect(jsonPath("$.items[2].reason").value("related to the finder"))
			.andExpect(jsonPath("$.items[2].trees[0].tree").value(filed.tree()));
	}

	@Test
	void tellsNoReasonThatWasErased() throws Exception {
		this.trees.county("eraseton", "JNF");
		TestTrees.Filed filed = this.trees.standing("eraseton", 100, "2026-05-02");
		TestPerson coordinator = this.people.coordinator("eraseton");
		this.trees
			.decide("/api/v1/measurements/" + filed.measurement(), "/setting-aside", "{\"reason\": \"a private word\"}",
					coordinator)
			.andExpect(status().is2xxSuccessful());
		this.jdbc.sql("delete from text_body where body = 'a private word'").update();
		journal("eraseton", "?limit=1", coordinator).andExpect(jsonPath("$.items[0].kind").value("set-aside"))
			.andExpect(jsonPath("$.items[0].reason").isEmpty());
	}

	@Test
	void isForTheCoordinatorsOfTheCountyOnly() throws Exception {
		this.trees.county("privaton", "JNG");
		this.mvc.perform(get("/api/v1/counties/privaton/journal")).andExpect(status().isUnauthorized());
		journal("privaton", "", this.people.coordinator("pagerton")).andExpect(status().isForbidden());
		journal("privaton", "", this.people.verifier("privaton")).andExpect(status().isForbidden());
		journal("not-founded", "", this.people.coordinator("not-founded")).andExpect(status().isNotFound());
	}

	private ResultActions journal(String county, String query, TestPerson person) throws Exception {
		return this.trees.ask(get("/api/v1/counties/" + county + "/journal" + query), person);
	}

	private static String id(ResultActions created) throws Exception {
		return JsonPath.read(created.andExpect(status().isCreated()).andReturn().getResponse().getContentAsString(),
				"$.id");
	}

}
