package county.bigtree.registry.people;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class RolesIT {

	private static final ZoneId ZONE = ZoneId.of("America/New_York");

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void holdsARoleFromItsFirstDayThroughItsLast() throws Exception {
		this.trees.county("roleland", "RLA");
		TestPerson coordinator = this.people.coordinator("roleland");
		TestPerson guest = this.people.with();
		LocalDate today = LocalDate.now(ZONE);
		give(coordinator, guest, "roleland", "verifier", today, today.plusDays(6)).andExpect(status().isCreated())
			.andExpect(jsonPath("$.until").value(today.plusDays(7).atStartOfDay(ZONE).toInstant().toString()));
		send(get("/api/v1/session"), guest, null).andExpect(jsonPath("$.roles[0].role").value("verifier"));
		this.jdbc.sql("update role_assignment set until_at = from_at + interval '1 microsecond' where person = ?")
			.param(guest.id())
			.update();
		send(get("/api/v1/session"), guest, null).andExpect(jsonPath("$.roles.length()").value(0));
	}

	@Test
	void doesNotHoldARoleBeforeItsFirstDay() throws Exception {
		TestPerson person = this.people.with();
		give(this.people.administrator(), person, "larkmere", "volunteer", LocalDate.now(ZONE).plusDays(2), null)
			.andExpect(status().isCreated());
		send(get("/api/v1/session"), person, null).andExpect(jsonPath("$.roles.length()").value(0));
		send(get("/api/v1/people/" + person.id() + "/roles"), person, null)
			.andExpect(jsonPath("$.items[0].role").value("volunteer"));
	}

	@Test
	void refusesDaysThatCantBe() throws Exception {
		TestPerson coordinator = this.people.coordinator("larkmere");
		TestPerson person = this.people.with();
		LocalDate today = LocalDate.now(ZONE);
		give(coordinator, person, "larkmere", "volunteer", today.minusDays(2), null).andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/from"));
		give(coordinator, person, "larkmere", "volunteer", today.plusDays(5), today.plusDays(4))
			.andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].pointer").value("#/until"));
		give(coordinator, person, "larkmere", "volunteer", null, null).andExpect(status().isCreated());
		give(coordinator, person, "larkmere", "volunteer", null, null).andExpect(status().isConflict());
		give(coordinator, new TestPerson(UUID.randomUUID(), "x", "x", "x"), "larkmere", "volunteer", null, null)
			.andExpect(status().isNotFound());
	}

	@Test
	void givesAndEndsRolesOnlyInOnesOwnCounty() throws Exception {
		TestPerson coordinator = this.people.coordinator("larkmere");
		TestPerson elsewhere = this.people.volunteer("dunmoor");
		give(coordinator, elsewhere, "dunmoor", "verifier", null, null).andExpect(status().isForbidden());
		give(coordinator, elsewhere, null, "administrator", null, null).andExpect(status().isForbidden());
		give(this.people.verifier("larkmere"), elsewhere, "larkmere", "volunteer", null, null)
			.andExpect(status().isForbidden());
		send(delete("/api/v1/people/" + elsewhere.id() + "/roles/" + roleOf(elsewhere)), coordinator, null)
			.andExpect(status().isForbidden());
		send(get("/api/v1/people/" + elsewhere.id() + "/roles"), coordinator, null).andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(0));
	}

	@Test
	void tellsWhoHeldWhichRoleOnAnyDay() throws Exception {
		String county = "county-" + UUID.randomUUID();
		TestPerson coordinator = this.people.coordinator(county);
		TestPerson past = this.people.verifier(county);
		this.jdbc.sql("""
				update role_assignment set until_at = null where person = :person""")
			.param("person", past.id())
			.update();
		send(delete("/api/v1/people/" + past.id() + "/roles/" + roleOf(past)), coordinator, null)
			.andExpect(status().isNoContent());
		send(get("/api/v1/session"), past, null).andExpect(jsonPath("$.roles.length()").value(0));
		send(get("/api/v1/people?county=" + county), coordinator, null)
			.andExpect(jsonPath("$.items[*].id", not(hasItem(past.id().toString()))));
		LocalDate today = LocalDate.now(java.time.ZoneOffset.UTC);
		send(get("/api/v1/people?county=" + county + "&on=" + today), coordinator, null)
			.andExpect(jsonPath("$.items[*].id", hasItem(past.id().toString())));
		send(get("/api/v1/people?county=" + county + "&on=" + today.minusDays(1)), coordinator, null)
			.andExpect(jsonPath("$.items.length()").value(0));
		send(delete("/api/v1/people/" + past.id() + "/roles/" + roleOf(past)), coordinator, null)
			.andExpect(status().isNotFound());
		assertThat(this.jdbc.sql("select ended_by from role_assignment where person = ?")
			.param(past.id())
			.query(UUID.class)
			.single()).isEqualTo(coordinator.id());
	}

	@Test
	void givesNoWorkToWhomItsTimeIsOver() throws Exception {
		this.trees.county("guestland", "RLB");
		TestPerson coordinator = this.people.coordinator("guestland");
		TestPerson past = this.people.verifier("guestland");
		this.jdbc.sql("update role_assignment set until_at = now() where person = ?").param(past.id()).update();
		TestTrees.Filed filed = this.trees.nominate("guestland", this.people.volunteer("guestland"), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		this.trees
			.decide("/api/v1/nominations/" + filed.nomination(), "/moves",
					"{\"move\": \"assign\", \"verifier\": \"" + past.id() + "\"}", coordinator)
			.andExpect(status().is(422))
			.andExpect(jsonPath("$.errors[0].code").value("not-a-verifier"));
	}

	private UUID roleOf(TestPerson person) {
		return this.jdbc.sql("select id from role_assignment where person = ? limit 1")
			.param(person.id())
			.query(UUID.class)
			.single();
	}

	private ResultActions give(TestPerson by, TestPerson to, @org.jspecify.annotations.Nullable String county,
			String role, @org.jspecify.annotations.Nullable LocalDate from,
			@org.jspecify.annotations.Nullable LocalDate until) throws Exception {
		return send(post("/api/v1/people/" + to.id() + "/roles"), by,
				"{\"county\": %s, \"role\": \"%s\", \"from\": %s, \"until\": %s}".formatted(quoted(county), role,
						quoted(from), quoted(until)));
	}

	private static String quoted(@org.jspecify.annotations.Nullable Object value) {
		return (value == null) ? "null" : "\"" + value + "\"";
	}

	private ResultActions send(MockHttpServletRequestBuilder request, TestPerson by,
			@org.jspecify.annotations.Nullable String body) throws Exception {
		MockHttpServletRequestBuilder sent = request.header(HttpHeaders.AUTHORIZATION, by.bearer());
		return this.mvc.perform((body != null) ? sent.contentType(MediaType.APPLICATION_JSON).content(body) : sent);
	}

}
