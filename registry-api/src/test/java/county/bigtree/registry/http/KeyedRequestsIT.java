package county.bigtree.registry.http;

import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

@RegistryTest
class KeyedRequestsIT {

	private static final String THINGS = "/api/v1/convention-tests/things";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private KeyedAnswers answers;

	private TestPerson person;

	private String name;

	@BeforeEach
	void makePerson() {
		this.person = this.people.with();
		this.name = "thing-" + UUID.randomUUID();
	}

	@Test
	void givesTheSameAnswerAgainWithoutDoingItAgain() throws Exception {
		MockHttpServletResponse first = send("plain", "key-1");
		MockHttpServletResponse again = send("plain", "key-1");
		assertThat(first.getStatus()).isEqualTo(201);
		assertThat(first.getHeader(KeyedAnswer.REPLAYED)).isNull();
		assertThat(again.getStatus()).isEqualTo(201);
		assertThat(again.getHeader(KeyedAnswer.REPLAYED)).isEqualTo("true");
		assertThat(again.getContentAsString()).isEqualTo(first.getContentAsString()).contains(this.name);
		assertThat(again.getContentType()).isEqualTo(first.getContentType());
		assertThat(again.getHeader(HttpHeaders.LOCATION)).isEqualTo(first.getHeader(HttpHeaders.LOCATION))
			.isEqualTo(THINGS + "/" + this.name);
		assertThat(again.getHeader(HttpHeaders.ETAG)).isEqualTo(first.getHeader(HttpHeaders.ETAG)).startsWith("\"7-");
		assertThat(calls()).isOne();
	}

	@Test
	void refusesTheKeyWithAnotherBody() throws Exception {
		send("plain", "key-1");
		MockHttpServletResponse other = send("refused", "key-1");
		assertThat(other.getStatus()).isEqualTo(422);
		assertThat(other.getContentAsString()).contains("/problems/key-reused");
		assertThat(calls()).isOne();
	}

	@Test
	void bindsNoKeyToARefusal() throws Exception {
		assertThat(send("refused", "key-1").getStatus()).isEqualTo(422);
		assertThat(creditName()).isEqualTo(this.person.creditName());
		assertThat(send("plain", "key-1").getStatus()).isEqualTo(201);
		assertThat(creditName()).isEqualTo(this.name);
	}

	@Test
	void recordsNothingWithAnAnswerThatIsNot2xx() throws Exception {
		assertThat(send("sent-back", "key-1").getStatus()).isEqualTo(409);
		assertThat(creditName()).isEqualTo(this.person.creditName());
		assertThat(keys()).isZero();
	}

	@Test
	void recordsNothingWhenItBreaks() throws Exception {
		assertThat(send("broken-off", "key-1").getStatus()).isEqualTo(500);
		assertThat(creditName()).isEqualTo(this.person.creditName());
		assertThat(keys()).isZero();
	}

	@Test
	void keepsKeysApartByAccount() throws Exception {
		send("plain", "key-1");
		this.person = this.people.with();
		MockHttpServletResponse other = send("plain", "key-1");
		assertThat(other.getStatus()).isEqualTo(201);
		assertThat(other.getHeader(KeyedAnswer.REPLAYED)).isNull();
		assertThat(calls()).isEqualTo(2);
	}

	@Test
	void bindsNoKeyToADryRun() throws Exception {
		send(THINGS + "?dryRun=true", "plain", "key-1");
		assertThat(keys()).isZero();
		assertThat(send("plain", "key-1").getHeader(KeyedAnswer.REPLAYED)).isNull();
	}

	@Test
	void refusesKeysOfTheWrongForm() throws Exception {
		for (String key : new String[] { "two words", "ä", "x".repeat(129) }) {
			MockHttpServletResponse answer = send("plain", key);
			assertThat(answer.getStatus()).as(key).isEqualTo(400);
			assertThat(answer.getContentAsString()).contains("/problems/invalid-parameter", "Idempotency-Key");
		}
		assertThat(send("plain", "x".repeat(128)).getStatus()).isEqualTo(201);
	}

	@Test
	void letsOneOfTwoAtOnceThrough() throws Exception {
		CompletableFuture<MockHttpServletResponse> first = CompletableFuture.supplyAsync(() -> sendSlow("key-1"));
		assertThat(ConventionEndpoints.entered(this.name).await(20, TimeUnit.SECONDS)).isTrue();
		MockHttpServletResponse second = send("slow", "key-1");
		ConventionEndpoints.released(this.name).countDown();
		assertThat(second.getStatus()).isEqualTo(409);
		assertThat(second.getContentAsString()).contains("/problems/in-flight");
		assertThat(second.getHeader(HttpHeaders.RETRY_AFTER)).isEqualTo("1");
		assertThat(first.get(20, TimeUnit.SECONDS).getStatus()).isEqualTo(201);
		assertThat(send("slow", "key-1").getHeader(KeyedAnswer.REPLAYED)).isEqualTo("true");
		assertThat(calls()).isOne();
	}

	@Test
	void triesAgainWhenOthersWriteAtTheSamePlace() throws Exception {
		assertThat(send("contended", "key-1").getStatus()).isEqualTo(201);
		assertThat(calls()).isEqualTo(3);
		assertThat(creditName()).isEqualTo(this.name);
	}

	@Test
	void saysBusyWhenTryingAgainDoesNotHelp() throws Exception {
		MockHttpServletResponse answer = send("always-contended", "key-1");
		assertThat(answer.getStatus()).isEqualTo(503);
		assertThat(answer.getHeader(HttpHeaders.RETRY_AFTER)).isEqualTo("1");
		assertThat(answer.getContentAsString()).contains("/problems/busy");
		assertThat(calls()).isEqualTo(WholeRequests.TRIES);
		assertThat(creditName()).isEqualTo(this.person.creditName());
	}

	@Test
	void bindsAKeyAnewThatIsTooOldAndNotYetForgotten() throws Exception {
		this.jdbc.sql("""
				insert into keyed_answer (account, method, path, key, request_hash, status, body, answered_at)
				values (?, 'POST', ?, 'key-1', '', 200, '', now() - interval '30 days 1 minute')""")
			.params(this.person.id(), THINGS)
			.update();
		assertThat(send("plain", "key-1").getStatus()).isEqualTo(201);
		assertThat(send("plain", "key-1").getHeader(KeyedAnswer.REPLAYED)).isEqualTo("true");
		assertThat(calls()).isOne();
		assertThat(keys()).isOne();
	}

	@Test
	void forgetsKeysAfterThirtyDays() throws Exception {
		send("plain", "key-1");
		assertThat(this.answers.forgetOld()).isZero();
		assertThat(keys()).isOne();
		this.jdbc.sql("""
				insert into keyed_answer (account, method, path, key, request_hash, status, body, answered_at)
				values (?, 'POST', '/x', 'old', '', 200, '', now() - interval '30 days 1 minute')""")
			.param(this.person.id())
			.update();
		assertThat(this.answers.forgetOld()).isOne();
		assertThat(keys()).isOne();
	}

	private MockHttpServletResponse sendSlow(String key) {
		try {
			return send("slow", key);
		}
		catch (Exception ex) {
			throw new IllegalStateException(ex);
		}
	}

	private MockHttpServletResponse send(String kind, String key) throws Exception {
		return send(THINGS, kind, key);
	}

	private MockHttpServletResponse send(String path, String kind, String key) throws Exception {
		return this.mvc
			.perform(post(path).header(HttpHeaders.AUTHORIZATION, this.person.bearer())
				.header(RequestKey.HEADER, key)
				.contentType(MediaType.APPLICATION_JSON)
				.content("{\"name\": \"" + this.name + "\", \"kind\": \"" + kind + "\"}"))
			.andReturn()
			.getResponse();
	}

	private int calls() {
		return ConventionEndpoints.calls.getOrDefault(this.name, new AtomicInteger()).get();
	}

	private String creditName() {
		return this.jdbc.sql("select credit_name from person where id = ?")
			.param(this.person.id())
			.query(String.class)
			.single();
	}

	private int keys() {
		return this.jdbc.sql("select count(*) from keyed_answer where account = ?")
			.param(this.person.id())
			.query(Integer.class)
			.single();
	}

}
