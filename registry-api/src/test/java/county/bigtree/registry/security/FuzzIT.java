package county.bigtree.registry.security;

import java.util.Optional;
import java.util.Arrays;
import java.util.Collections;
import java.util.stream.Collectors;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.journal.SealJournal;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * Sends requests that are right, nearly right and wrong to every endpoint, as everyone:
 * none may be answered by a fault of the service, every refusal must be a problem of the
 * catalogue, and every answer as the description of the API says, which every test over
 * MockMvc is held to. Each request is sent in a transaction that is rolled back, so that
 * a request depends on its seed alone: {@code -Dregistry.fuzz.seed=N} sends others, and
 * {@code -Dregistry.fuzz.requests=N} so many to each row of the table of who may what.
 */
@RegistryTest
class FuzzIT {

	private static final Logger log = LoggerFactory.getLogger(FuzzIT.class);

	private static final String HERE = "fuzzhere";

	private static final String BEYOND = "fuzzbeyond";

	private static final int REQUESTS = Integer.getInteger("registry.fuzz.requests", 20);

	private static final long SEED = Long.getLong("registry.fuzz.seed", 1);

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
	private JdbcClient jdbc;

	@Autowired
	private JsonMapper json;

	@Test
	void answersWhateverIsAskedAsDescribed() throws Exception {
		this.seals.seal();
		this.trees.county(HERE, "FZH");
		this.trees.county(BEYOND, "FZB");
		TestPerson owner = this.people.with();
		PlantedThings things = PlantedThings.of(owner, HERE, BEYOND, this.trees, this.people);
		this.people.give(owner, CountyRole.of(HERE, Role.COORDINATOR));
		List<@Nullable TestPerson> askers = new ArrayList<>(List.of(owner, owner, owner, this.people.administrator(),
				this.people.volunteer(HERE), this.people.verifier(HERE), this.people.coordinator(BEYOND)));
		askers.add(null);
		OddRequests requests = new OddRequests(this.json,
				new TableRequests(this.json, description(), this.people, HERE, BEYOND, HERE));
		Map<Integer, Integer> statuses = new TreeMap<>();
		List<String> faults = new ArrayList<>();
		int rowNumber = 0;
		for (WhoMay row : WhoMay.table()) {
			rowNumber++;
			for (int number = 0; number < REQUESTS; number++) {
				Random random = new Random((SEED * 1000 + rowNumber) * 100_000 + number);
				TestPerson asker = askers.get(random.nextInt(askers.size()));
				statuses.merge(send(requests, row, things, asker, random, faults), 1, Integer::sum);
			}
		}
		log.info("Answers by status: {}", statuses);
		assertThat(faults).as("of the answers " + statuses).isEmpty();
		assertThat(statuses).containsKeys(200, 400, 401, 403, 404, 422);
		assertThat(statuses.getOrDefault(200, 0))
			.isGreaterThan(statuses.values().stream().mapToInt(Integer::intValue).sum() / 10);
	}

	private int send(OddRequests requests, WhoMay row, PlantedThings things, @Nullable TestPerson asker, Random random,
			List<String> faults) {
		Integer answered = this.transactions.execute((status) -> {
			status.setRollbackOnly();
			try {
				MvcResult result = this.mvc.perform(requests.make(this.mvc, row, things, asker, random)).andReturn();
				if (result.getResponse().getStatus() / 100 == 2) {
					this.jdbc.sql("set constraints all immediate").update();
				}
				fault(result).map(FuzzIT::printable).ifPresent(faults::add);
				return result.getResponse().getStatus();
			}
			catch (AssertionError | Exception ex) {
				faults.add(printable(row.name() + ": " + ex + at(ex)));
				return 0;
			}
		});
		return (answered != null) ? answered : 0;
	}

	private static String at(Throwable thrown) {
		return Arrays.stream(thrown.getStackTrace())
			.filter((frame) -> !(thrown instanceof AssertionError))
			.limit(5)
			.map((frame) -> "\n  at " + frame)
			.collect(Collectors.joining());
	}

	private static String printable(String text) {
		return text.replaceAll("[^\\n -~]", "?");
	}

	private Optional<String> fault(MvcResult result) throws Exception {
		MockHttpServletResponse response = result.getResponse();
		int status = response.getStatus();
		if (status < 400) {
			return Optional.empty();
		}
		String body = response.getContentAsString();
		boolean wellFormed = status < 500
				&& (isForm(result) ? isPage(response, body) : isRefusal(response, body, status));
		return wellFormed ? Optional.empty()
				: Optional.of(told(result.getRequest()) + " was answered " + status + ": " + body);
	}

	private static boolean isForm(MvcResult result) {
		return result.getModelAndView() != null;
	}

	/** A form that comes back. */
	private static boolean isPage(MockHttpServletResponse response, String body) {
		return String.valueOf(response.getContentType()).startsWith("text/html") && body.contains("class=\"summary\"")
				&& body.strip().endsWith("</html>");
	}

	/** To browsers refusals are pages, too. */
	private boolean isRefusal(MockHttpServletResponse response, String body, int status) {
		return String.valueOf(response.getContentType()).startsWith("text/html")
				? body.contains("<h1>") && body.strip().endsWith("</html>") : isProblem(response, body, status);
	}

	private boolean isProblem(MockHttpServletResponse response, String body, int status) {
		JsonNode problem = this.json.readTree(body);
		return String.valueOf(response.getContentType()).startsWith("application/problem+json")
				&& ProblemType.find(problem.path("type").stringValue("").replaceFirst("^/problems/", ""))
					.filter((type) -> type.status().value() == status
							&& type.title().equals(problem.path("title").stringValue("")))
					.isPresent()
				&& problem.path("status").intValue(0) == status && !problem.path("detail").stringValue("").isBlank();
	}

	private static String told(MockHttpServletRequest request) throws Exception {
		StringBuilder told = new StringBuilder(String.valueOf(request.getMethod()).toUpperCase(Locale.ROOT));
		told.append(' ').append(request.getRequestURI()).append('?').append(request.getQueryString());
		Collections.list(request.getHeaderNames())
			.forEach((name) -> told.append('\n').append(name).append(": ").append(request.getHeader(name)));
		byte[] body = request.getContentAsByteArray();
		String text = (body != null) ? new String(body, StandardCharsets.UTF_8) : "";
		return told.append('\n').append(text, 0, Math.min(text.length(), 1500)).toString();
	}

	private JsonNode description() throws Exception {
		return this.json
			.readTree(this.mvc.perform(get("/openapi.json")).andReturn().getResponse().getContentAsString());
	}

}
