package county.bigtree.registry.nomination;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * Two people decide about one thing at once, each on what they saw before: one of them
 * does, and the other is told how it stands now.
 */
@RegistryTest
class TwoCoordinatorsIT {

	private static final int ROUNDS = 12;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	private final ExecutorService threads = Executors.newFixedThreadPool(2);

	@AfterEach
	void endThreads() {
		this.threads.shutdownNow();
	}

	@Test
	void ofTwoWhoMoveANominationOneDoesAndTheOtherSeesHowItStands() throws Exception {
		this.trees.county("vyington", "TWA");
		TestPerson one = this.people.coordinator("vyington");
		TestPerson other = this.people.coordinator("vyington");
		String verifier = this.people.verifier("vyington").id().toString();
		for (int round = 0; round < ROUNDS; round++) {
			TestTrees.Filed filed = nominate("vyington");
			String path = "/api/v1/nominations/" + filed.nomination();
			List<MockHttpServletResponse> answers = atOnce(
					decision(path, "/moves", "{\"move\": \"decline\", \"reason\": \"a shrub\"}", one),
					decision(path, "/moves", "{\"move\": \"assign\", \"verifier\": \"" + verifier + "\"}", other));
			MockHttpServletResponse won = with(200, answers);
			MockHttpServletResponse lost = with(412, answers);
			String stands = JsonPath.read(won.getContentAsString(), "$.status");
			assertThat(JsonPath.<String>read(lost.getContentAsString(), "$.present.status")).isEqualTo(stands);
			assertThat(JsonPath.<List<?>>read(seen(path, one).getContentAsString(), "$.moves")).hasSize(2);
		}
	}

	@Test
	void ofASignOffAndADeclineOneStandsAndTheOtherSeesWhich() throws Exception {
		this.trees.county("rivalbury", "TWB");
		TestPerson coordinator = this.people.coordinator("rivalbury");
		TestPerson verifier = this.people.verifier("rivalbury");
		for (int round = 0; round < ROUNDS; round++) {
			TestTrees.Filed filed = nominate("rivalbury");
			String path = "/api/v1/nominations/" + filed.nomination();
			List<MockHttpServletResponse> answers = atOnce(
					decision(path, "/moves", "{\"move\": \"decline\", \"reason\": \"a shrub\"}", coordinator),
					() -> this.trees.signOff(filed.measurement(), verifier, "{\"verdict\": \"confirmed\"}")
						.andReturn()
						.getResponse());
			boolean declined = answers.get(0).getStatus() == 200;
			MockHttpServletResponse lost = answers.get(declined ? 1 : 0);
			assertThat(answers.get(declined ? 0 : 1).getStatus()).isEqualTo(declined ? 200 : 201);
			assertThat(lost.getStatus()).isEqualTo(declined ? 409 : 412);
			String stands = declined ? "declined" : "accepted";
			assertThat(JsonPath.<String>read(lost.getContentAsString(), "$.present.status")).isEqualTo(stands);
			assertThat(JsonPath.<String>read(seen(path, verifier).getContentAsString(), "$.status")).isEqualTo(stands);
		}
	}

	@Test
	void ofTwoWhoAnswerOverTheLineOneDoesAndTheOtherSeesHowItStands() throws Exception {
		this.trees.county("hitherton", "TWC");
		this.trees.county("yonderton", "TWD");
		TestPerson proposer = this.people.coordinator("hitherton");
		TestPerson one = this.people.coordinator("yonderton");
		TestPerson other = this.people.coordinator("yonderton");
		for (int round = 0; round < ROUNDS; round++) {
			TestTrees.Filed filed = nominate("hitherton");
			String proposal = JsonPath.read(this.trees.decide("/api/v1/trees/" + filed.tree(), "/location", """
					{"location": {"latitude": 40.1, "longitude": -86.2, "accuracyMetres": 5}, "county": "yonderton",
					 "reason": "the stone"}""", proposer).andReturn().getResponse().getContentAsString(), "$.id");
			String path = "/api/v1/relocations/" + proposal;
			List<MockHttpServletResponse> answers = atOnce(
					decision(path, "/decision", "{\"accept\": true, \"reason\": \"ours\"}", one),
					decision(path, "/decision", "{\"accept\": false, \"reason\": \"not ours\"}", other));
			String stands = JsonPath.read(with(200, answers).getContentAsString(), "$.status");
			assertThat(JsonPath.<String>read(with(412, answers).getContentAsString(), "$.present.status"))
				.isEqualTo(stands);
			assertThat(JsonPath.<String>read(seen(path, proposer).getContentAsString(), "$.status")).isEqualTo(stands);
		}
	}

	private TestTrees.Filed nominate(String county) throws Exception {
		return this.trees.nominate(county, this.people.volunteer(county), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
	}

	/** On what the person sees now. */
	private Callable<MockHttpServletResponse> decision(String address, String action, String body, TestPerson person)
			throws Exception {
		String tag = String.valueOf(seen(address, person).getHeader(HttpHeaders.ETAG));
		return () -> this.trees.ask(post(address + action).content(body).header(HttpHeaders.IF_MATCH, tag), person)
			.andReturn()
			.getResponse();
	}

	private MockHttpServletResponse seen(String address, TestPerson person) throws Exception {
		return this.trees.ask(get(address), person).andReturn().getResponse();
	}

	@SafeVarargs
	private List<MockHttpServletResponse> atOnce(Callable<MockHttpServletResponse>... requests) throws Exception {
		CyclicBarrier start = new CyclicBarrier(requests.length);
		List<Callable<MockHttpServletResponse>> together = new ArrayList<>();
		for (Callable<MockHttpServletResponse> request : requests) {
			together.add(() -> {
				start.await();
				return request.call();
			});
		}
		List<MockHttpServletResponse> answers = new ArrayList<>();
		for (Future<MockHttpServletResponse> done : this.threads.invokeAll(together)) {
			answers.add(done.get());
		}
		return answers;
	}

	private static MockHttpServletResponse with(int status, List<MockHttpServletResponse> answers) {
		assertThat(answers).extracting(MockHttpServletResponse::getStatus).containsOnlyOnce(status);
		return answers.stream().filter((answer) -> answer.getStatus() == status).findFirst().orElseThrow();
	}

}
