package county.bigtree.registry.people;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.patch;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What becomes of a person who leaves, and of what they had open.
 */
@RegistryTest
class LeavingIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private List<RegisterCheck> checks;

	@Autowired
	private TransactionTemplate transactions;

	@Autowired
	private HandBackAtTheEnd atTheEnd;

	@Test
	void handsBackWhatAVerifierHasOpenWhenTheAccountIsClosed() throws Exception {
		this.trees.county("leaveland", "LVA");
		TestPerson coordinator = this.people.coordinator("leaveland");
		TestPerson verifier = this.people.verifier("leaveland");
		String nomination = "/api/v1/nominations/" + assignedNomination(coordinator, verifier);
		String measurement = "/api/v1/measurements/" + assignedMeasurement(coordinator, verifier);
		String visit = plannedVisit(coordinator, verifier);
		Browser browser = new Browser(this.mvc, "127.0.0.1");
		browser.signIn(verifier.email(), TestPeople.PASSWORD).andExpect(status().isOk());
		send(post("/api/v1/people/" + verifier.id() + "/deactivation"), coordinator, null)
			.andExpect(status().isNoContent());
		browser.read("/api/v1/session").andExpect(status().isUnauthorized());
		send(get("/api/v1/session"), verifier, null).andExpect(status().isUnauthorized());
		browser.signIn(verifier.email(), TestPeople.PASSWORD).andExpect(status().isUnauthorized());
		send(get(nomination), coordinator, null).andExpect(jsonPath("$.status").value("submitted"))
			.andExpect(content().string(containsString("hand-back")))
			.andExpect(content().string(containsString("Their account was closed.")));
		send(get(measurement), coordinator, null).andExpect(jsonPath("$.status").value("filed"));
		send(get(visit), coordinator, null).andExpect(jsonPath("$.outcome.outcome").value("handed-back"))
			.andExpect(jsonPath("$.open").value(false));
		assertThat(wrong("leaveland")).isEmpty();
		send(post("/api/v1/people/" + verifier.id() + "/activation"), coordinator, null)
			.andExpect(status().isForbidden());
		send(post("/api/v1/people/" + verifier.id() + "/activation"), this.people.administrator(), null)
			.andExpect(status().isNoContent());
		browser.signIn(verifier.email(), TestPeople.PASSWORD)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.roles.length()").value(0));
	}

	@Test
	void handsBackNothingWhileTheyStillVerifyThere() throws Exception {
		this.trees.county("stayland", "LVB");
		TestPerson coordinator = this.people.coordinator("stayland");
		TestPerson both = this.people.with(CountyRole.of("stayland", Role.VERIFIER),
				CountyRole.of("stayland", Role.VOLUNTEER));
		String nomination = "/api/v1/nominations/" + nominated("stayland", coordinator, both);
		endRole(coordinator, both, "volunteer");
		send(get(nomination), coordinator, null).andExpect(jsonPath("$.status").value("under-review"));
		endRole(coordinator, both, "verifier");
		send(get(nomination), coordinator, null).andExpect(jsonPath("$.status").value("submitted"));
		assertThat(wrong("stayland")).isEmpty();
	}

	@Test
	void handsBackWhatIsOpenWhenTheTimeOfAGuestIsOver() throws Exception {
		this.trees.county("guestsland", "LVE");
		TestPerson coordinator = this.people.coordinator("guestsland");
		TestPerson guest = this.people.with();
		send(post("/api/v1/people/" + guest.id() + "/roles"), coordinator,
				"{\"county\": \"guestsland\", \"role\": \"verifier\", \"until\": \"2999-12-31\"}")
			.andExpect(status().isCreated());
		String nomination = "/api/v1/nominations/" + nominated("guestsland", coordinator, guest);
		this.atTheEnd.handBack();
		send(get(nomination), coordinator, null).andExpect(jsonPath("$.status").value("under-review"));
		this.jdbc.sql("update role_assignment set until_at = now() where person = ?").param(guest.id()).update();
		this.atTheEnd.handBack();
		send(get(nomination), coordinator, null).andExpect(jsonPath("$.status").value("submitted"));
		assertThat(wrong("guestsland")).isEmpty();
	}

	@Test
	void keepsTheOnlyAdministrator() throws Exception {
		TestPerson only = this.people.administrator();
		this.transactions.executeWithoutResult((status) -> {
			this.jdbc.sql("""
					update role_assignment set until_at = greatest(now(), from_at)
					where role = 'administrator' and until_at is null and person <> ?""").param(only.id()).update();
		});
		send(post("/api/v1/people/" + only.id() + "/deactivation"), only, null).andExpect(status().is(422))
			.andExpect(jsonPath("$.type").value("/problems/refused"));
		TestPerson another = this.people.administrator();
		send(post("/api/v1/people/" + only.id() + "/deactivation"), another, null).andExpect(status().isNoContent());
	}

	@Test
	void closesNobodysAccountWhoBelongsElsewhereToo() throws Exception {
		TestPerson both = this.people.with(CountyRole.of("larkmere", Role.VOLUNTEER),
				CountyRole.of("dunmoor", Role.VOLUNTEER));
		send(post("/api/v1/people/" + both.id() + "/deactivation"), this.people.coordinator("larkmere"), null)
			.andExpect(status().isForbidden());
		send(post("/api/v1/people/" + both.id() + "/erasure"), this.people.coordinator("larkmere"), null)
			.andExpect(status().isForbidden());
		send(get("/api/v1/session"), both, null).andExpect(status().isOk());
	}

	@Test
	void showsPeopleWhatIsKeptOfThemAndTakesTheirNames() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		send(patch("/api/v1/people/me"), person, "{\"creditName\": \"The Heron\", \"legalName\": \"Hanna Fennick\"}")
			.andExpect(status().isOk());
		send(get("/api/v1/people/me"), person, null).andExpect(jsonPath("$.creditName").value("The Heron"))
			.andExpect(jsonPath("$.legalName").value("Hanna Fennick"))
			.andExpect(jsonPath("$.email").value(person.email()))
			.andExpect(jsonPath("$.roles[0].county").value("larkmere"));
		send(get("/api/v1/session"), person, null).andExpect(jsonPath("$.creditName").value("The Heron"))
			.andExpect(content().string(not(containsString("Fennick"))));
		send(get("/api/v1/people?county=larkmere&limit=500"), this.people.coordinator("larkmere"), null)
			.andExpect(content().string(not(containsString("Fennick"))));
		send(patch("/api/v1/people/me"), person, "{\"legalName\": \"\"}")
			.andExpect(jsonPath("$.legalName").doesNotExist())
			.andExpect(jsonPath("$.creditName").value("The Heron"));
		this.mvc.perform(get("/api/v1/people/me")).andExpect(status().isUnauthorized());
	}

	@Test
	void erasesAPersonAndTheirWordsAndKeepsTheFacts() throws Exception {
		this.trees.county("eraseland", "LVC");
		TestPerson person = this.people.volunteer("eraseland");
		TestTrees.Filed filed = this.trees.nominate("eraseland", person, "quercus-alba",
				TestTrees.measurement(100, "2026-05-02", "Wilhelmina Canary"));
		this.trees.signOff(filed.measurement(), this.people.verifier("eraseland"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		String oaks = points("eraseland");
		send(get("/api/v1/people/me/words"), person, null).andExpect(status().isOk())
			.andExpect(content().string(containsString("Wilhelmina Canary")));
		erase(person, "not the password").andExpect(status().is(422));
		erase(person, TestPeople.PASSWORD).andExpect(status().isNoContent());
		send(get("/api/v1/session"), person, null).andExpect(status().isUnauthorized());
		assertThat(points("eraseland")).isEqualTo(oaks);
		assertThat(wrong("eraseland")).isEmpty();
		assertThat(remains("Wilhelmina Canary")).isZero();
		assertThat(this.jdbc.sql("select row_to_json(p)::text from person p where id = ?")
			.param(person.id())
			.query(String.class)
			.single()).doesNotContain(person.email(), person.creditName()).contains("erased.invalid");
		assertThat(this.jdbc.sql("select count(*) from sign_in_event where account = ? or person = ?")
			.params(SignInRecord.account(person.email()), person.id())
			.query(Integer.class)
			.single()).isZero();
		send(get("/api/v1/measurements/" + filed.measurement()), this.people.coordinator("eraseland"), null)
			.andExpect(status().isOk())
			.andExpect(content().string(not(containsString("Wilhelmina"))));
		send(get("/api/v1/trees/" + filed.tree() + "/story"), this.people.coordinator("eraseland"), null)
			.andExpect(status().isOk())
			.andExpect(content().string(not(containsString(person.creditName()))));
		send(post("/api/v1/people/" + person.id() + "/activation"), this.people.administrator(), null)
			.andExpect(status().isNotFound());
	}

	@Test
	void leavesWhatACoordinatorRecordedOfOwners() throws Exception {
		this.trees.county("ownersland", "LVF");
		TestPerson coordinator = this.people.coordinator("ownersland");
		TestTrees.Filed filed = this.trees.standing("ownersland", 100, "2026-05-02");
		this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/owners")
				.content("{\"name\": \"Ottoline Planter\", \"contact\": \"planter@example.org\"}"), coordinator)
			.andExpect(status().isCreated());
		send(get("/api/v1/people/me/words"), coordinator, null)
			.andExpect(content().string(not(containsString("Planter"))));
		send(post("/api/v1/people/" + coordinator.id() + "/erasure"), this.people.administrator(), null)
			.andExpect(status().isNoContent());
		assertThat(this.jdbc.sql("select count(*) from text_body where body = 'Ottoline Planter'")
			.query(Integer.class)
			.single()).isOne();
		assertThat(wrong("ownersland")).isEmpty();
	}

	@Test
	void findsWordsThatAreThereThoughErased() throws Exception {
		this.trees.county("faultland", "LVD");
		TestPerson person = this.people.volunteer("faultland");
		this.trees.nominate("faultland", person, "quercus-alba", TestTrees.measurement(100, "2026-05-02"));
		List<String> found = new ArrayList<>();
		this.transactions.executeWithoutResult((status) -> {
			status.setRollbackOnly();
			this.jdbc.sql("""
					insert into text_erasure (text, county, seq, recorded_at, by_person, ground)
					select id, county, seq, recorded_at, ?, 'asked-by-author' from text_piece
					where county = 'faultland' limit 1""").param(person.id()).update();
			found.addAll(wrong("faultland"));
		});
		assertThat(found).anySatisfy((one) -> assertThat(one).contains("were erased and are still there"));
	}

	private void endRole(TestPerson by, TestPerson of, String role) throws Exception {
		UUID id = this.jdbc.sql("select id from role_assignment where person = ? and role = ?")
			.params(of.id(), role)
			.query(UUID.class)
			.single();
		send(org.springframework.test.web.servlet.request.MockMvcRequestBuilders
			.delete("/api/v1/people/" + of.id() + "/roles/" + id), by, null).andExpect(status().isNoContent());
	}

	private String assignedNomination(TestPerson coordinator, TestPerson verifier) throws Exception {
		return nominated("leaveland", coordinator, verifier);
	}

	private String nominated(String county, TestPerson coordinator, TestPerson verifier) throws Exception {
		TestTrees.Filed filed = this.trees.nominate(county, this.people.volunteer(county), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		assign("/api/v1/nominations/" + filed.nomination(), coordinator, verifier);
		return filed.nomination();
	}

	private String assignedMeasurement(TestPerson coordinator, TestPerson verifier) throws Exception {
		TestTrees.Filed filed = this.trees.standing("leaveland", 100, "2026-05-02");
		String answer = this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
				.content(TestTrees.measurement(101, "2026-06-02")), this.people.volunteer("leaveland"))
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		String id = JsonPath.read(answer, "$.id");
		assign("/api/v1/measurements/" + id, coordinator, verifier);
		return id;
	}

	private void assign(String address, TestPerson coordinator, TestPerson verifier) throws Exception {
		this.trees
			.decide(address, "/moves", "{\"move\": \"assign\", \"verifier\": \"" + verifier.id() + "\"}", coordinator)
			.andExpect(status().isOk());
	}

	private String plannedVisit(TestPerson coordinator, TestPerson verifier) throws Exception {
		TestTrees.Filed filed = this.trees.standing("leaveland", 90, "2026-05-02");
		return String.valueOf(this.trees
			.ask(post("/api/v1/visits").content("{\"tree\": \"" + filed.tree()
					+ "\", \"purpose\": \"doubt\", \"verifier\": \"" + verifier.id() + "\"}"), coordinator)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.LOCATION));
	}

	private ResultActions erase(TestPerson person, String password) throws Exception {
		return send(post("/api/v1/people/me/erasure"), person, "{\"presentPassword\": \"" + password + "\"}");
	}

	private String points(String county) throws Exception {
		return JsonPath
			.read(this.trees.oaks(county).andReturn().getResponse().getContentAsString(), "$.items[0].points")
			.toString();
	}

	private int remains(String words) {
		return this.jdbc.sql("""
				select (select count(*) from text_body where body like :words)
					+ (select count(*) from keyed_answer where convert_from(body, 'UTF8') like :words)""")
			.param("words", "%" + words + "%")
			.query(Integer.class)
			.single();
	}

	private List<String> wrong(String county) {
		List<String> found = new ArrayList<>();
		this.transactions.executeWithoutResult((status) -> {
			Findings findings = new Findings(Integer.MAX_VALUE, found::add, (looked) -> {
			});
			this.checks.stream()
				.filter((check) -> List.of("JournalCheck", "FactsCheck", "WordsCheck")
					.contains(org.springframework.aop.support.AopUtils.getTargetClass(check).getSimpleName()))
				.forEach((check) -> check.look(findings));
			assertThat(findings.lookedAt()).isPositive();
		});
		return found.stream().filter((sentence) -> sentence.contains(county)).toList();
	}

	private ResultActions send(MockHttpServletRequestBuilder request, TestPerson by,
			@org.jspecify.annotations.Nullable String body) throws Exception {
		MockHttpServletRequestBuilder sent = request.header(HttpHeaders.AUTHORIZATION, by.bearer());
		return this.mvc.perform((body != null) ? sent.contentType(MediaType.APPLICATION_JSON).content(body) : sent);
	}

}
