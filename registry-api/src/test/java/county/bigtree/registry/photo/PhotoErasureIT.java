package county.bigtree.registry.photo;

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
import county.bigtree.registry.photo.image.TestPictures;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What is kept of photos, how much of them is taken, and that what was erased is gone
 * while the register stays whole.
 */
@RegistryTest
class PhotoErasureIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PhotoLimits limits;

	@Autowired
	private TransactionTemplate transactions;

	@Autowired
	private List<RegisterCheck> checks;

	@Test
	void whatWasErasedIsGoneAndTheRegisterStaysWhole() throws Exception {
		this.trees.county("photogone", "QPI");
		String photos = photosOf(this.trees.standing("photogone", 120, "2020-05-02"));
		TestPerson sender = this.people.volunteer("photogone");
		TestPerson coordinator = this.people.coordinator("photogone");
		String own = sent(photos, sender, "own");
		String asked = sent(photos, sender, "asked");
		String kept = sent(photos, sender, "kept");
		this.trees.decide("/api/v1/photos/" + asked, "/decisions", "{\"decision\": \"pass\"}", coordinator)
			.andExpect(status().isOk());
		this.trees
			.decide("/api/v1/photos/" + asked, "/decisions",
					"{\"decision\": \"take-back\", \"reason\": \"Words of the asked one.\"}", coordinator)
			.andExpect(status().isOk());
		erase(own, sender, 204);
		erase(asked, this.people.verifier("photogone"), 403);
		erase(asked, coordinator, 204);
		erase(asked, coordinator, 404);
		for (String gone : List.of(own, asked)) {
			for (String end : List.of("", "/image")) {
				this.trees.ask(get("/api/v1/photos/" + gone + end), coordinator).andExpect(status().isNotFound());
			}
			assertThat(count("select count(*) from photo_body where photo = ?::uuid", gone)).isZero();
		}
		assertThat(bodies("own")).isZero();
		assertThat(bodies("asked")).isZero();
		assertThat(bodies("kept")).isPositive();
		this.trees.ask(get(photos), coordinator).andExpect(jsonPath("$.items[*].id", contains(kept)));
		assertThat(findings("photogone")).isEmpty();
	}

	@Test
	void whoClosesTheirAccountForGoodTakesTheirPhotosAlong() throws Exception {
		this.trees.county("photoleave", "QPJ");
		String photos = photosOf(this.trees.standing("photoleave", 120, "2020-05-02"));
		TestPerson sender = this.people.volunteer("photoleave");
		String photo = sent(photos, sender, "leaving");
		String others = sent(photos, this.people.volunteer("photoleave"), "staying");
		this.trees
			.ask(post("/api/v1/people/me/erasure")
				.content("{\"presentPassword\": \"%s\"}".formatted(TestPeople.PASSWORD)), sender)
			.andExpect(status().isNoContent());
		assertThat(count("select count(*) from photo_body where photo = ?::uuid", photo)).isZero();
		assertThat(bodies("leaving")).isZero();
		TestPerson coordinator = this.people.coordinator("photoleave");
		this.trees.ask(get("/api/v1/photos/" + photo), coordinator).andExpect(status().isNotFound());
		this.trees.ask(get("/api/v1/photos/" + others), coordinator).andExpect(status().isOk());
		assertThat(findings("photoleave")).isEmpty();
	}

	@Test
	void thirteenPhotosOfAMeasurementAreOneTooMany() throws Exception {
		this.trees.county("photomany", "QPK");
		TestTrees.Filed tree = this.trees.standing("photomany", 120, "2020-05-02");
		String photos = "/api/v1/measurements/" + tree.measurement() + "/photos";
		String last = "";
		for (int number = 0; number < PhotoLimits.OF_MEASUREMENT; number++) {
			last = TestPhotos.sent(this.trees, photos, tree.filer());
		}
		TestPhotos.send(this.trees, photos, TestPictures.jpeg(200, 200), tree.filer())
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.detail").value(org.hamcrest.Matchers.containsString("has 12 photos")));
		this.trees.decide("/api/v1/photos/" + last, "/decisions", "{\"decision\": \"withdraw\"}", tree.filer())
			.andExpect(status().isOk());
		TestPhotos.send(this.trees, photos, TestPictures.jpeg(200, 200), tree.filer()).andExpect(status().isCreated());
	}

	@Test
	void anAccountSendsOnlySoMuchWithinADay() throws Exception {
		this.trees.county("photoday", "QPL");
		TestTrees.Filed tree = this.trees.standing("photoday", 120, "2020-05-02");
		UUID sender = tree.filer().id();
		TestPhotos.sent(this.trees, photosOf(tree), tree.filer());
		this.transactions.executeWithoutResult((status) -> {
			status.setRollbackOnly();
			for (int age : new int[] { 1, 25 }) {
				this.jdbc
					.sql("""
							insert into photo (id, county, seq, recorded_at, tree, shows, by_person, width, height, received_bytes, digest)
							select gen_random_uuid(), county, seq, now() - make_interval(hours => :age), tree, shows, by_person, width, height,
							  119000000, digest from photo where by_person = :sender and received_bytes < 1000000""")
					.param("age", age)
					.param("sender", sender)
					.update();
			}
			UUID id = UUID.fromString(tree.tree());
			this.limits.requireRoom(sender, id, null, 900_000);
			org.assertj.core.api.Assertions
				.assertThatThrownBy(() -> this.limits.requireRoom(sender, id, null, 1_000_000))
				.hasMessageContaining("120 MB within a day");
		});
	}

	@Test
	void aRequestSentAgainWithItsKeyIsAnsweredAndNotKeptTwice() throws Exception {
		this.trees.county("photokey", "QPM");
		TestTrees.Filed tree = this.trees.standing("photokey", 120, "2020-05-02");
		byte[] file = TestPictures.jpeg(400, 300);
		List<String> answers = new ArrayList<>();
		for (int times = 0; times < 2; times++) {
			answers.add(this.mvc
				.perform(TestPhotos.form(photosOf(tree), file)
					.header("Idempotency-Key", "one-photo")
					.header(HttpHeaders.AUTHORIZATION, tree.filer().bearer()))
				.andExpect(status().isCreated())
				.andReturn()
				.getResponse()
				.getContentAsString());
		}
		assertThat(answers.get(0)).isEqualTo(answers.get(1));
		this.mvc
			.perform(TestPhotos.form(photosOf(tree), TestPictures.jpeg(300, 300))
				.header("Idempotency-Key", "one-photo")
				.header(HttpHeaders.AUTHORIZATION, tree.filer().bearer()))
			.andExpect(jsonPath("$.type").value("/problems/key-reused"));
		this.trees.ask(get(photosOf(tree)), tree.filer())
			.andExpect(jsonPath("$.items[*].id", contains(JsonPath.<String>read(answers.get(0), "$.id"))));
	}

	private String sent(String address, TestPerson sender, String what) throws Exception {
		return TestPhotos.sent(this.trees, address, sender, "text", "Words of the " + what + " one.", "credit",
				"Credit of the " + what + " one.");
	}

	private void erase(String photo, TestPerson person, int status) throws Exception {
		this.trees.ask(post("/api/v1/photos/" + photo + "/erasure").contentType(MediaType.APPLICATION_JSON), person)
			.andExpect(status().is(status));
	}

	private long bodies(String what) {
		return count("select count(*) from text_body where body like '%of the ' || ? || ' one.'", what) + count(
				"select count(*) from keyed_answer where convert_from(body, 'UTF8') like '%of the ' || ? || ' one.%'",
				what);
	}

	private long count(String sql, String value) {
		return this.jdbc.sql(sql).param(value).query(Long.class).single();
	}

	private List<String> findings(String county) {
		List<String> found = new ArrayList<>();
		for (RegisterCheck check : this.checks) {
			check.look(new Findings(1000, found::add, (looked) -> {
			}));
		}
		return found.stream().filter((one) -> one.startsWith(county + ":")).toList();
	}

	private static String photosOf(TestTrees.Filed tree) {
		return "/api/v1/trees/" + tree.tree() + "/photos";
	}

}
