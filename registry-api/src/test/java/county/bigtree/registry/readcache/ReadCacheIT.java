package county.bigtree.registry.readcache;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.head;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What is answered from kept bytes is what would be answered anew, whatever was written
 * before. A request with a cookie is never answered from them, and so tells what would.
 */
@RegistryTest
class ReadCacheIT {

	private static final String JDBC = "org.springframework.jdbc.core.JdbcTemplate";

	private static final String ANY_COOKIE = "seen=before";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	private final ListAppender<ILoggingEvent> log = new ListAppender<>();

	@BeforeEach
	void listen() {
		this.log.start();
		logger().setLevel(Level.DEBUG);
		logger().setAdditive(false);
		logger().addAppender(this.log);
	}

	@AfterEach
	void stopListening() {
		logger().setLevel(null);
		logger().setAdditive(true);
		logger().detachAppender(this.log);
	}

	private static Logger logger() {
		return (Logger) LoggerFactory.getLogger(JDBC);
	}

	@Test
	void answersASecondTimeWithoutAskingForTrees() throws Exception {
		this.trees.county("keptfirst", "KFA");
		this.trees.standing("keptfirst", 100, "2020-05-02");
		for (String address : List.of(oaks("keptfirst"), oaks("keptfirst") + "?limit=3",
				oaks("keptfirst") + "?asOf=2021-01-01", "/api/v1/counties/keptfirst/standings",
				"/api/v1/counties/keptfirst/species/quercus-alba/titles")) {
			for (String coding : List.of("identity", "gzip, br")) {
				MockHttpServletRequestBuilder question = get(address).header(HttpHeaders.ACCEPT_ENCODING, coding);
				MockHttpServletResponse first = answer(question);
				assertThat(statements()).as(address)
					.anyMatch((sql) -> sql.contains(" score ") || sql.contains("title_span"));
				MockHttpServletResponse second = answer(question);
				assertThat(statements()).as(address).allMatch((sql) -> sql.contains("county_head"));
				assertThat(second.getContentAsByteArray()).as(address).isEqualTo(first.getContentAsByteArray());
				assertThat(headers(second)).as(address).isEqualTo(headers(first));
				assertThat(second.getHeader("Request-Id")).isNotEqualTo(first.getHeader("Request-Id"));
				String tag = String.valueOf(first.getHeader(HttpHeaders.ETAG));
				MockHttpServletResponse held = answer(question.header(HttpHeaders.IF_NONE_MATCH, tag));
				assertThat(statements()).as(address).allMatch((sql) -> sql.contains("county_head"));
				assertThat(held.getStatus()).isEqualTo(304);
				assertThat(held.getContentAsByteArray()).isEmpty();
				assertThat(held.getHeader(HttpHeaders.ETAG)).isEqualTo(tag);
			}
		}
	}

	@Test
	void keepsAnAnswerThatTheFirstWhoAskedHadAlready() throws Exception {
		this.trees.county("keptheld", "KFB");
		this.trees.standing("keptheld", 100, "2020-05-02");
		String tag = String
			.valueOf(answer(get(oaks("keptheld")).header(HttpHeaders.COOKIE, ANY_COOKIE)).getHeader(HttpHeaders.ETAG));
		assertThat(answer(get(oaks("keptheld")).header(HttpHeaders.IF_NONE_MATCH, tag)).getStatus()).isEqualTo(304);
		statements();
		assertThat(answer(get(oaks("keptheld"))).getContentAsString()).contains("\"rank\":1");
		assertThat(statements()).allMatch((sql) -> sql.contains("county_head"));
		MockHttpServletResponse looked = answer(head(oaks("keptheld")));
		assertThat(looked.getHeader(HttpHeaders.ETAG)).isEqualTo(tag);
		assertThat(looked.getContentAsByteArray()).isEmpty();
	}

	@Test
	void isForThoseWhoAreNotSignedInAlone() throws Exception {
		this.trees.county("keptsigned", "KFC");
		this.trees.standing("keptsigned", 100, "2020-05-02");
		answer(get(oaks("keptsigned")));
		statements();
		MockHttpServletResponse answer = answer(get(oaks("keptsigned")).header(HttpHeaders.AUTHORIZATION,
				this.people.volunteer("keptsigned").bearer()));
		assertThat(answer.getHeader(HttpHeaders.CACHE_CONTROL)).isEqualTo("private, no-store");
		assertThat(statements()).anyMatch((sql) -> sql.contains(" score "));
		this.mvc.perform(get(oaks("keptsigned")).header(HttpHeaders.AUTHORIZATION, "Bearer nobody"))
			.andExpect(status().isUnauthorized());
	}

	@Test
	void refusesWhatItRefused() throws Exception {
		this.trees.county("keptodd", "KFD");
		for (int time = 0; time < 2; time++) {
			this.mvc.perform(get(oaks("keptodd") + "?limit=0")).andExpect(status().is4xxClientError());
			this.mvc.perform(get(oaks("keptodd") + "?nothing=1")).andExpect(status().isBadRequest());
			this.mvc.perform(get(oaks("nowhere-at-all"))).andExpect(status().isNotFound());
			this.mvc.perform(get(oaks("keptodd")).accept("text/csv")).andExpect(status().isNotAcceptable());
		}
		this.mvc.perform(get(oaks("keptodd"))).andExpect(status().isOk());
		this.mvc.perform(post(oaks("keptodd"))).andExpect(status().isMethodNotAllowed());
	}

	@Test
	void followsEveryKindOfDecision() throws Exception {
		this.trees.county("kepteast", "KFE");
		this.trees.county("keptwest", "KFF");
		TestPerson both = this.people.coordinator("kepteast", "keptwest");
		TestTrees.Filed first = this.trees.standing("kepteast", 100, "2020-05-02");
		follows("signed off", () -> this.trees.standing("kepteast", 120, "2020-05-02"));
		follows("judged", () -> decide(first, "/eligibility", "{\"eligible\": false, \"reason\": \"a pot\"}", both));
		follows("judged again",
				() -> decide(first, "/eligibility", "{\"eligible\": true, \"reason\": \"roots\"}", both));
		follows("identified", () -> decide(first, "/identifications",
				"{\"species\": \"quercus-rubra\", \"by\": \"leaf\", \"reason\": \"bristles\"}", both));
		follows("identified back", () -> decide(first, "/identifications",
				"{\"species\": \"quercus-alba\", \"by\": \"leaf\", \"reason\": \"no bristles\"}", both));
		String report = "/api/v1/condition-reports/" + id(this.trees.ask(
				post("/api/v1/trees/" + first.tree() + "/condition-reports")
					.content("{\"condition\": \"fallen\", \"observedOn\": \"2026-06-01\"}"),
				this.people.volunteer("kepteast")));
		follows("fallen",
				() -> this.trees
					.decide(report, "/decision", "{\"accept\": true, \"began\": \"2026-05-30\", \"reason\": \"seen\"}",
							both)
					.andExpect(status().isOk()));
		follows("new rules", () -> this.trees.ask(post("/api/v1/counties/kepteast/rulebooks").content(
				"{\"effectiveOn\": \"2026-01-01\", \"oldestFilingMonths\": 1200, \"currencyYears\": 3, \"reason\": \"a vote\"}"),
				both)
			.andExpect(status().isCreated()));
	}

	/**
	 * An answer about a county's past tells of a tree that stands in another county
	 * today, where its owner is asked.
	 */
	@Test
	void outlivesNoConsentWhereverItWasTakenBack() throws Exception {
		this.trees.county("keptnorth", "KFG");
		this.trees.county("keptsouth", "KFH");
		TestPerson both = this.people.coordinator("keptnorth", "keptsouth");
		TestTrees.Filed filed = this.trees.standing("keptnorth", 100, "2020-05-02");
		Instant stoodThere = Instant.now();
		decide(filed, "/location",
				"""
						{"location": {"latitude": 40.0, "longitude": -86.0, "accuracyMetres": 5}, "county": "keptsouth", "reason": "the stone"}""",
				both);
		List<String> addresses = List.of(oaks("keptsouth"),
				oaks("keptnorth") + "?asOf=2021-01-01&knownAt=" + stoodThere,
				"/api/v1/counties/keptnorth/species/quercus-alba/titles", "/api/v1/counties/keptsouth/standings");
		String owner = id(this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/owners")
			.content("{\"name\": \"C. Landholder\", \"contact\": \"the mill\"}"), both));
		for (boolean consents : new boolean[] { true, false, true }) {
			this.trees
				.ask(post("/api/v1/owners/" + owner + "/consents").content(
						"{\"purposes\": [\"listing\"], \"given\": %s, \"how\": \"letter\"}".formatted(consents)), both)
				.andExpect(status().isCreated());
			for (String address : addresses) {
				assertThat(answer(get(address)).getContentAsString().contains(filed.tree())).as(address)
					.isEqualTo(consents);
			}
		}
	}

	private void follows(String what, Deed deed) throws Exception {
		List<String> addresses = List.of(oaks("kepteast"), "/api/v1/counties/kepteast/standings",
				"/api/v1/counties/kepteast/species/quercus-alba/titles");
		Map<String, String> before = new LinkedHashMap<>();
		for (String address : addresses) {
			before.put(address, answer(get(address)).getContentAsString());
		}
		deed.done();
		for (String address : addresses) {
			String after = answer(get(address)).getContentAsString();
			assertThat(after).as("%s: %s", what, address)
				.isEqualTo(answer(get(address).header(HttpHeaders.COOKIE, ANY_COOKIE)).getContentAsString());
			assertThat(address.endsWith("titles") || !after.equals(before.get(address))).as("%s: %s", what, address)
				.isTrue();
		}
	}

	private static String oaks(String county) {
		return "/api/v1/counties/" + county + "/species/quercus-alba/standing";
	}

	private void decide(TestTrees.Filed filed, String action, String body, TestPerson person) throws Exception {
		this.trees.decide("/api/v1/trees/" + filed.tree(), action, body, person).andExpect(status().is2xxSuccessful());
	}

	private static String id(org.springframework.test.web.servlet.ResultActions made) throws Exception {
		return JsonPath.read(made.andExpect(status().isCreated()).andReturn().getResponse().getContentAsString(),
				"$.id");
	}

	private MockHttpServletResponse answer(MockHttpServletRequestBuilder question) throws Exception {
		return this.mvc.perform(question).andReturn().getResponse();
	}

	private static Map<String, List<Object>> headers(MockHttpServletResponse answer) {
		Map<String, List<Object>> headers = new TreeMap<>();
		answer.getHeaderNames().forEach((name) -> headers.put(name, answer.getHeaderValues(name)));
		assertThat(headers.remove("Request-Id")).isNotNull();
		return headers;
	}

	/** What this thread asked the database for since it was last looked. */
	private List<String> statements() {
		List<String> sent = new ArrayList<>();
		new ArrayList<>(this.log.list).forEach((event) -> {
			String message = event.getFormattedMessage();
			if (event.getThreadName().equals(Thread.currentThread().getName()) && message.contains("[")) {
				sent.add(message);
			}
		});
		this.log.list.clear();
		return sent;
	}

	private interface Deed {

		void done() throws Exception;

	}

}
