package county.bigtree.registry.visit;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What the guest verifier of one visit may do, and when that ends. No outside source: it
 * is this register's rule.
 */
@RegistryTest
class GuestVerifierHttpIT {

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	private static final String NOT_CONFIRMED = "{\"verdict\": \"not-confirmed\", \"remarks\": \"no such fork\"}";

	private static final String MEASURED = "{\"outcome\": \"measured\", \"visitedOn\": \"2026-06-10\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private List<RegisterCheck> checks;

	@Test
	void signsOffWithinTheVisitAndTellsItsOutcome() throws Exception {
		this.trees.county("guesthost", "GVA");
		TestTrees.Filed filed = nominated("guesthost");
		TestPerson guest = this.people.verifier("guesthome");
		String visit = plan("guesthost", filed.tree(), guest);
		this.trees.ask(get(visit), guest).andExpect(status().isOk()).andExpect(jsonPath("$.guest").value(true));
		this.trees.ask(get("/api/v1/nominations/" + filed.nomination()), guest).andExpect(status().isOk());
		this.trees.ask(get("/api/v1/measurements/" + filed.measurement()), guest).andExpect(status().isOk());
		this.trees.ask(get("/api/v1/trees/" + filed.tree() + "/measurements"), guest)
			.andExpect(jsonPath("$.items[0].id").value(filed.measurement()));
		String signed = this.trees.signOff(filed.measurement(), guest, CONFIRMED)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees.oaks("guesthost").andExpect(jsonPath("$.items[0].title").value("champion"));
		this.trees.decide(visit, "/outcome", MEASURED, guest)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.open").value(false))
			.andExpect(jsonPath("$.outcome.by").value(guest.id().toString()));
		String signOff = "/api/v1/sign-offs/" + JsonPath.<String>read(signed, "$.id");
		this.trees.ask(get(signOff), guest)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.givenBy").value(guest.creditName()));
		this.trees.ask(get(signOff), this.people.verifier("guesthome")).andExpect(status().isNotFound());
		this.trees.ask(get(signOff), this.people.volunteer("guesthost")).andExpect(status().isForbidden());
		assertThat(found()).noneMatch((sentence) -> sentence.contains(JsonPath.<String>read(signed, "$.id")));
	}

	@Test
	void signsOffUnderReviewByAnotherAndWithoutAnyRole() throws Exception {
		this.trees.county("guestreview", "GVB");
		TestTrees.Filed filed = nominated("guestreview");
		TestPerson guest = this.people.with();
		this.trees
			.decide("/api/v1/nominations/" + filed.nomination(), "/moves",
					"{\"move\": \"assign\", \"verifier\": \"%s\"}".formatted(this.people.verifier("guestreview").id()),
					this.people.coordinator("guestreview"))
			.andExpect(status().isOk());
		plan("guestreview", filed.tree(), guest);
		this.trees.signOff(filed.measurement(), guest, CONFIRMED).andExpect(status().isCreated());
	}

	@Test
	void isRefusedBeforeBeingNamedAndAtOtherTrees() throws Exception {
		this.trees.county("guestother", "GVC");
		TestTrees.Filed filed = nominated("guestother");
		TestTrees.Filed other = nominated("guestother");
		TestPerson guest = this.people.volunteer("guestother");
		expectShutOut(guest, filed);
		String visit = plan("guestother", filed.tree(), guest);
		expectShutOut(guest, other);
		this.trees.ask(get(visit), this.people.verifier("guestother")).andExpect(status().isNotFound());
		this.trees.ask(get(visit), this.people.volunteer("guestother")).andExpect(status().isForbidden());
		this.trees.signOff(filed.measurement(), guest, NOT_CONFIRMED).andExpect(status().isCreated());
	}

	@Test
	void mayDoNothingElseInTheCounty() throws Exception {
		this.trees.county("guestelse", "GVD");
		TestTrees.Filed filed = nominated("guestelse");
		TestPerson guest = this.people.volunteer("guestelse");
		plan("guestelse", filed.tree(), guest);
		this.trees.ask(get("/api/v1/visits"), guest).andExpect(status().isForbidden());
		this.trees.ask(get("/api/v1/counties/guestelse/queue"), guest).andExpect(status().isForbidden());
		this.trees.ask(get("/api/v1/nominations?county=guestelse"), guest)
			.andExpect(jsonPath("$.items.length()").value(0));
		this.trees
			.ask(post("/api/v1/visits").content("{\"tree\": \"%s\", \"purpose\": \"doubt\"}".formatted(filed.tree())),
					guest)
			.andExpect(status().isForbidden());
		this.trees
			.ask(post("/api/v1/nominations/" + filed.nomination() + "/moves")
				.content("{\"move\": \"return\", \"reason\": \"which?\"}")
				.header(HttpHeaders.IF_MATCH, "\"1-x\""), guest)
			.andExpect(status().isNotFound());
	}

	@Test
	void isRefusedOnceTheOutcomeIsTold() throws Exception {
		this.trees.county("guestafter", "GVE");
		TestTrees.Filed filed = nominated("guestafter");
		TestPerson guest = this.people.volunteer("guestafter");
		String visit = plan("guestafter", filed.tree(), guest);
		this.trees
			.decide(visit, "/outcome", "{\"outcome\": \"not-reached\", \"visitedOn\": \"2026-06-10\"}",
					this.people.coordinator("guestafter"))
			.andExpect(status().isOk());
		expectShutOut(guest, filed);
		this.trees.ask(get(visit), guest).andExpect(status().isForbidden());
		this.trees.ask(post(visit + "/outcome").content(MEASURED).header(HttpHeaders.IF_MATCH, "\"2-x\""), guest)
			.andExpect(status().isForbidden());
	}

	@Test
	void isNoMoreIndependentThanOthersWhoNominated() throws Exception {
		this.trees.county("guestown", "GVF");
		TestTrees.Filed filed = nominated("guestown");
		plan("guestown", filed.tree(), filed.filer());
		this.trees.signOff(filed.measurement(), filed.filer(), CONFIRMED)
			.andExpect(status().isForbidden())
			.andExpect(jsonPath("$.detail").value(containsString("nominat")));
	}

	@Test
	void isNotAGuestWithATokenForFilingOnly() throws Exception {
		this.trees.county("guesttoken", "GVG");
		TestTrees.Filed filed = nominated("guesttoken");
		TestPerson guest = this.people.volunteer("guesttoken");
		plan("guesttoken", filed.tree(), guest);
		expectShutOut(this.people.withFilingToken(guest), filed);
		this.trees.signOff(filed.measurement(), guest, CONFIRMED).andExpect(status().isCreated());
	}

	@Test
	void isNamedByACoordinatorAndIsNoVerifierThere() throws Exception {
		this.trees.county("guestnamed", "GVH");
		TestTrees.Filed filed = nominated("guestnamed");
		TestPerson verifier = this.people.verifier("guestnamed");
		this.trees.ask(post("/api/v1/visits").content(body(filed.tree(), this.people.with().id())), verifier)
			.andExpect(status().isForbidden());
		TestPerson coordinator = this.people.coordinator("guestnamed");
		for (UUID nobody : List.of(verifier.id(), UUID.randomUUID())) {
			this.trees.ask(post("/api/v1/visits").content(body(filed.tree(), nobody)), coordinator)
				.andExpect(status().isUnprocessableContent())
				.andExpect(jsonPath("$.errors[0].pointer").value("#/verifier"));
		}
		plan("guestnamed", filed.tree(), this.people.with());
		this.trees.ask(get("/api/v1/counties/guestnamed/journal"), coordinator)
			.andExpect(jsonPath("$.items[0].kind").value("guest-visit-planned"));
	}

	private TestTrees.Filed nominated(String county) throws Exception {
		return this.trees.nominate(county, this.people.volunteer(county), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
	}

	private void expectShutOut(TestPerson guest, TestTrees.Filed filed) throws Exception {
		this.trees.signOff(filed.measurement(), guest, CONFIRMED).andExpect(status().isForbidden());
		for (String address : List.of("nominations/" + filed.nomination(), "measurements/" + filed.measurement(),
				"trees/" + filed.tree() + "/measurements")) {
			this.trees.ask(get("/api/v1/" + address), guest).andExpect(status().isNotFound());
		}
	}

	/** Plans the visit as a coordinator and answers its address. */
	private String plan(String county, String tree, TestPerson guest) throws Exception {
		String location = this.trees
			.ask(post("/api/v1/visits").content(body(tree, guest.id())), this.people.coordinator(county))
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.LOCATION);
		return String.valueOf(location);
	}

	private List<String> found() {
		List<String> found = new ArrayList<>();
		RegisterCheck signOffs = this.checks.stream()
			.filter((check) -> check.subject().startsWith("sign-offs"))
			.findFirst()
			.orElseThrow();
		signOffs.look(new Findings(Integer.MAX_VALUE, found::add, (looked) -> {
		}));
		return found;
	}

	private static String body(String tree, UUID guest) {
		return "{\"tree\": \"%s\", \"purpose\": \"sign-off\", \"verifier\": \"%s\", \"guest\": true}".formatted(tree,
				guest);
	}

}
