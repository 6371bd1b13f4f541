package county.bigtree.registry.security;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.journal.SealJournal;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.security.WhoMay.Asker;
import county.bigtree.registry.security.WhoMay.Outcome;
import county.bigtree.registry.security.WhoMay.Whose;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * Holds every endpoint to the table of who may do what: each cell is really asked, with a
 * request that would do if it were allowed, and in a transaction that is rolled back, so
 * that no cell bears on another.
 */
@RegistryTest
class WhoMayIT {

	private static final String OF_THE_TESTS = "/api/v1/convention-tests";

	private static final String HERE = "whomayhere";

	private static final String ELSEWHERE = "whomayelsewhere";

	private static final String PRACTICE = "whomaypractice";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private SealJournal seals;

	@Autowired
	private TransactionTemplate transactions;

	@Autowired
	private JsonMapper json;

	@Autowired
	@Qualifier("requestMappingHandlerMapping")
	private RequestMappingHandlerMapping handlers;

	@Test
	void everyEndpointHasARowAndEveryRowAnEndpoint() throws Exception {
		Set<String> rows = WhoMay.table().stream().map(WhoMay::endpoint).collect(Collectors.toCollection(TreeSet::new));
		assertThat(rows).isEqualTo(endpoints());
	}

	private Set<String> endpoints() {
		Set<String> endpoints = new TreeSet<>();
		this.handlers.getHandlerMethods().keySet().forEach((mapping) -> {
			Set<RequestMethod> declared = mapping.getMethodsCondition().getMethods();
			Set<RequestMethod> methods = declared.isEmpty() ? Set.of(RequestMethod.GET) : declared;
			mapping.getPatternValues()
				.forEach((path) -> methods.forEach((method) -> endpoints.add(method.name() + " " + path)));
		});
		endpoints.removeIf((endpoint) -> endpoint.contains(OF_THE_TESTS));
		return endpoints;
	}

	@Test
	void everyoneIsLetThroughOrRefusedAsTheTableSays() throws Exception {
		this.seals.seal();
		Map<Asker, TestPerson> askers = askers();
		Map<Asker, PlantedThings> own = new EnumMap<>(Asker.class);
		for (Map.Entry<Asker, TestPerson> asker : askers.entrySet()) {
			own.put(asker.getKey(), planted(asker.getValue()));
			giveRoles(asker.getKey(), asker.getValue());
		}
		PlantedThings anothers = planted(this.people.with());
		TableRequests requests = new TableRequests(this.json, description(), this.people, HERE, ELSEWHERE, PRACTICE);
		List<String> faults = new ArrayList<>();
		for (WhoMay row : WhoMay.table()) {
			boolean done = false;
			for (Asker asker : Asker.values()) {
				done |= asked(requests, row, asker, askers.get(asker), Whose.ANOTHERS, anothers, faults);
				PlantedThings things = own.get(asker);
				if (things != null) {
					done |= asked(requests, row, asker, askers.get(asker), Whose.OWN, things, faults);
				}
			}
			if (!done && row.letsAnybodyThrough() && !row.isForm()) {
				faults.add(row.name() + ": nobody got it done, so that the row says little");
			}
		}
		assertThat(faults).isEmpty();
	}

	/** Whether it was done, and not only let through. */
	private boolean asked(TableRequests requests, WhoMay row, Asker asker, @Nullable TestPerson person, Whose whose,
			PlantedThings things, List<String> faults) throws Exception {
		MockHttpServletResponse answer = rolledBack(() -> requests.ask(this.mvc, row, things, person));
		Outcome expected = row.outcome(asker, whose);
		String body = answer.getContentAsString();
		if (!expected.is(answer.getStatus(), body)) {
			faults.add("%s asked by %s for %s: %s expected, but %d: %s".formatted(row.name(), asker, whose, expected,
					answer.getStatus(), body));
		}
		return answer.getStatus() / 100 == 2 || answer.getStatus() / 100 == 3;
	}

	/** Everyone but the anonymous, without a role as yet. */
	private Map<Asker, TestPerson> askers() throws Exception {
		this.trees.county(HERE, "WMH");
		this.trees.county(ELSEWHERE, "WME");
		this.trees.practiceCounty(PRACTICE, "WMP");
		Map<Asker, TestPerson> askers = new EnumMap<>(Asker.class);
		for (Asker asker : Asker.values()) {
			if (asker != Asker.ANONYMOUS) {
				askers.put(asker, this.people.with());
			}
		}
		return askers;
	}

	private PlantedThings planted(TestPerson owner) throws Exception {
		return PlantedThings.of(owner, HERE, ELSEWHERE, this.trees, this.people);
	}

	private void giveRoles(Asker asker, TestPerson person) {
		switch (asker) {
			case ANONYMOUS -> {
			}
			case VOLUNTEER -> give(person, Role.VOLUNTEER, HERE, PRACTICE);
			case VERIFIER -> give(person, Role.VERIFIER, HERE, PRACTICE);
			case COORDINATOR -> give(person, Role.COORDINATOR, HERE, PRACTICE);
			case ELSEWHERE -> give(person, Role.COORDINATOR, ELSEWHERE);
			case ADMINISTRATOR -> this.people.give(person, CountyRole.administrator());
		}
	}

	private void give(TestPerson person, Role role, String... counties) {
		for (String county : counties) {
			this.people.give(person, CountyRole.of(county, role));
		}
	}

	private JsonNode description() throws Exception {
		return this.json
			.readTree(this.mvc.perform(get("/openapi.json")).andReturn().getResponse().getContentAsString());
	}

	private MockHttpServletResponse rolledBack(Callable<MockHttpServletResponse> asking) {
		return Objects.requireNonNull(this.transactions.execute((status) -> {
			status.setRollbackOnly();
			try {
				return asking.call();
			}
			catch (Exception ex) {
				throw new IllegalStateException(ex);
			}
		}));
	}

}
