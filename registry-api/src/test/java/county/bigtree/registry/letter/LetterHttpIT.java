package county.bigtree.registry.letter;

import java.time.LocalDate;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Letters over HTTP.
 */
@RegistryTest
class LetterHttpIT {

	private static final String CONDITION = """
			{"about": "condition", "tree": "%s", "text": "It lost its top.", "contact": "A. Neighbour, Mill Lane"}""";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void anybodyWritesAndOnlyTheCountysCoordinatorsRead() throws Exception {
		this.trees.county("letterton", "LHA");
		TestTrees.Filed filed = this.trees.standing("letterton", 100, "2020-05-02");
		String answer = write("letterton", CONDITION.formatted(filed.tree())).andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(answer).doesNotContain("Neighbour", filed.tree());
		String letter = "/api/v1/letters/" + JsonPath.read(answer, "$.id");
		TestPerson coordinator = this.people.coordinator("letterton");
		this.mvc.perform(get(letter)).andExpect(status().isUnauthorized());
		this.trees.ask(get(letter), this.people.verifier("letterton")).andExpect(status().isForbidden());
		this.trees.ask(get(letter), this.people.coordinator("letterfar")).andExpect(status().isNotFound());
		this.trees.ask(get("/api/v1/counties/letterton/letters"), this.people.coordinator("letterfar"))
			.andExpect(status().isForbidden());
		this.trees.ask(get("/api/v1/counties/letterton/letters"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].text").value("It lost its top."))
			.andExpect(jsonPath("$.items[0].contact").value(nullValue()))
			.andExpect(jsonPath("$.items[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[0].overdue").value(false));
		this.trees.ask(get(letter), coordinator)
			.andExpect(jsonPath("$.contact").value("A. Neighbour, Mill Lane"))
			.andExpect(jsonPath("$.writtenBy").value(nullValue()));
		this.trees.ask(get("/api/v1/counties/letterton/openings"), coordinator)
			.andExpect(jsonPath("$.items[0].what").value("letter"))
			.andExpect(jsonPath("$.items[0].tree").value(filed.tree()));
		this.trees.oaks("letterton").andExpect(jsonPath("$.items[0].damaged").value(false));
	}

	@Test
	void aLetterWaitsInTheQueueUntilItIsToldWhatBecameOfIt() throws Exception {
		this.trees.county("letterqueue", "LHB");
		TestPerson coordinator = this.people.coordinator("letterqueue");
		String letter = id(write("letterqueue",
				"{\"about\": \"tip\", \"tree\": \"the one by the mill\", \"text\": \"A huge elm.\"}"));
		this.trees.ask(get("/api/v1/counties/letterqueue/queue"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].kind").value("letter"))
			.andExpect(jsonPath("$.items[0].id").value(letter))
			.andExpect(jsonPath("$.items[0].status").value("tip"))
			.andExpect(jsonPath("$.items[0].tree").value(nullValue()));
		this.trees.ask(get("/api/v1/letters/" + letter), coordinator)
			.andExpect(jsonPath("$.text").value("A huge elm.\n\n(the one by the mill)"))
			.andExpect(jsonPath("$.tree").value(nullValue()));
		decide(letter, "{\"became\": \"answer\"}", coordinator).andExpect(status().isUnprocessableContent());
		decide(letter, "{\"became\": \"answer\", \"answer\": \"It is known, thank you.\"}", coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.answer").value("It is known, thank you."))
			.andExpect(jsonPath("$.decidedBy").value(coordinator.id().toString()));
		decide(letter, "{\"became\": \"nothing\"}", coordinator).andExpect(status().isConflict());
		this.trees.ask(get("/api/v1/counties/letterqueue/queue"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(get("/api/v1/counties/letterqueue/letters?open=true"), coordinator)
			.andExpect(jsonPath("$.items.length()").value(0));
	}

	/**
	 * Not even where one person coordinates both: the heads of counties are taken in one
	 * order.
	 */
	@Test
	void aLetterBecomesNothingAtATreeOfAnotherCounty() throws Exception {
		this.trees.county("letterhere", "LHH");
		this.trees.county("letteraway", "LHW");
		TestTrees.Filed away = this.trees.standing("letteraway", 100, "2020-05-02");
		TestPerson both = this.people.with(CountyRole.of("letterhere", Role.COORDINATOR),
				CountyRole.of("letteraway", Role.COORDINATOR));
		String letter = id(write("letterhere", "{\"about\": \"tip\", \"text\": \"Go and see the oak.\"}"));
		decide(letter,
				"{\"became\": \"visit\", \"visit\": {\"tree\": \"%s\", \"purpose\": \"condition\"}}"
					.formatted(away.tree()),
				both)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/visit/tree"));
		decide(letter,
				"""
						{"became": "correction", "correction": {"tree": "%s", "visibility": "county", "reason": "asked"}}"""
					.formatted(away.tree()),
				both)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/correction/tree"));
	}

	@Test
	void aLetterBecomesAReportAVisitANominationOrACorrectionInOneStep() throws Exception {
		this.trees.county("letterstep", "LHC");
		TestTrees.Filed filed = this.trees.standing("letterstep", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("letterstep");
		String report = id(write("letterstep", CONDITION.formatted(filed.tree())));
		decide(report,
				"{\"became\": \"report\", \"report\": {\"condition\": \"damaged\", \"observedOn\": \"%s\"}}"
					.formatted(LocalDate.now().minusDays(1)),
				coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.conditionReport").isNotEmpty());
		this.trees.oaks("letterstep").andExpect(jsonPath("$.items[0].damaged").value(true));
		String visit = id(write("letterstep", CONDITION.formatted(filed.tree())));
		decide(visit,
				"{\"became\": \"visit\", \"visit\": {\"tree\": \"%s\", \"purpose\": \"condition\"}}"
					.formatted(filed.tree()),
				coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.visit").isNotEmpty());
		String nomination = id(write("letterstep", "{\"about\": \"tip\", \"text\": \"An oak.\"}"));
		decide(nomination, """
				{"became": "nomination", "nomination": {"species": "quercus-alba",
				 "location": {"latitude": 40.1, "longitude": -86.2}, "filedFor": {"name": "A. Neighbour"},
				 "measurement": %s}}""".formatted(TestTrees.measurement(90, "2020-05-02")), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.nomination").isNotEmpty());
		String correction = id(write("letterstep",
				"{\"about\": \"privacy\", \"tree\": \"%s\", \"text\": \"Take my yard off.\"}".formatted(filed.tree())));
		decide(correction,
				"{\"became\": \"correction\", \"correction\": {\"visibility\": \"county\", \"reason\": \"by letter\"}}",
				coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.correctedTree").value(filed.tree()));
		this.mvc.perform(get("/api/v1/trees/" + filed.tree())).andExpect(jsonPath("$.position").doesNotExist());
	}

	@Test
	void whatAFailedOutcomeBeganIsUndone() throws Exception {
		this.trees.county("letterfail", "LHD");
		TestPerson coordinator = this.people.coordinator("letterfail");
		String letter = id(write("letterfail", "{\"about\": \"doubt\", \"text\": \"Too tall.\"}"));
		decide(letter, "{\"became\": \"correction\", \"correction\": {\"visibility\": \"county\", \"reason\": \"x\"}}",
				coordinator)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/correction/tree"));
		decide(letter, "{\"became\": \"visit\"}", coordinator).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/visit"));
		decide(letter, "{\"became\": \"nothing\", \"visit\": {\"tree\": \"x\", \"purpose\": \"doubt\"}}", coordinator)
			.andExpect(status().isUnprocessableContent());
		this.trees.ask(get("/api/v1/letters/" + letter), coordinator)
			.andExpect(jsonPath("$.became").value(nullValue()));
		write("letterfail", "{\"about\": \"praise\", \"text\": \"Good.\"}")
			.andExpect(status().isUnprocessableContent());
		write("letterfail", "{\"about\": \"tip\", \"text\": \" \"}").andExpect(status().isUnprocessableContent());
		write("letternowhere", "{\"about\": \"tip\", \"text\": \"An oak.\"}").andExpect(status().isNotFound());
	}

	private ResultActions write(String county, String body) throws Exception {
		return this.mvc.perform(
				post("/api/v1/counties/" + county + "/letters").contentType(MediaType.APPLICATION_JSON).content(body));
	}

	private ResultActions decide(String letter, String body, TestPerson coordinator) throws Exception {
		return this.trees.ask(post("/api/v1/letters/" + letter + "/outcome").content(body), coordinator);
	}

	private static String id(ResultActions answer) throws Exception {
		return JsonPath.read(answer.andExpect(status().isCreated()).andReturn().getResponse().getContentAsString(),
				"$.id");
	}

}
